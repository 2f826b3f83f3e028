// Commands that draw: they need Qt's GUI, but no display.
#include <QApplication>
#include <QFileInfo>
#include <QRegularExpression>

#include <fmt/format.h>

#include "app/check_report.h"
#include "app/command_line.h"
#include "app/commands.h"
#include "app/requested_project.h"
#include "app/review.h"
#include "widgets/figures/figure_export.h"
#include "widgets/theme/theme.h"

namespace jw {
namespace {

/// The application on a platform without a screen, unless one was asked for.
std::unique_ptr<QApplication> drawingApplication(int& argc, char** argv) {
  if (!qEnvironmentVariableIsSet("QT_QPA_PLATFORM")) qputenv("QT_QPA_PLATFORM", "offscreen");
  auto app = std::make_unique<QApplication>(argc, argv);
  applyTheme(*app, ThemeKind::Light);
  return app;
}

tl::expected<QSizeF, InputError> readSize(const std::string& text) {
  static const QRegularExpression kForm("^([0-9]+(?:\\.[0-9]+)?)x([0-9]+(?:\\.[0-9]+)?)$");
  const auto match = kForm.match(QString::fromStdString(text));
  const QSizeF size(match.captured(1).toDouble(), match.captured(2).toDouble());
  const auto fits = [](double mm) { return mm >= 40 && mm <= 2000; };
  if (!match.hasMatch() || !fits(size.width()) || !fits(size.height())) {
    return tl::unexpected(InputError{"'" + text + "' is no size", "--size",
                                     "write width x height in mm, each 40 to 2000, e.g. 160x110"});
  }
  return size;
}

tl::expected<ExportOptions, InputError> exportOptions(const FigureRequest& request) {
  const auto size = readSize(request.size);
  if (!size) return tl::unexpected(size.error());
  if (request.dpi < 50 || request.dpi > 1200) {
    return tl::unexpected(InputError{fmt::format("{} is out of range", request.dpi), "--dpi",
                                     "allowed is 50 to 1200"});
  }
  ExportOptions options;
  options.sizeMm = *size;
  options.dpi = request.dpi;
  return options;
}

tl::expected<void, InputError> checkView(const std::string& view) {
  const QStringList names = figureNames();
  if (names.contains(QString::fromStdString(view))) return {};
  return tl::unexpected(InputError{"there is no figure '" + view + "'", "--view",
                                   "choose one of " + names.join(", ").toStdString()});
}

QString localPath(const std::string& text) { return QString::fromLocal8Bit(text.c_str()); }

}  // namespace

int runFigure(const FigureRequest& request, int& argc, char** argv) {
  const auto view = checkView(request.view);
  if (!view) return reportBadInput(view.error());
  const auto options = exportOptions(request);
  if (!options) return reportBadInput(options.error());
  auto loaded = loadRequested(request.project);
  if (!loaded) return reportBadInput(loaded.error());
  const auto app = drawingApplication(argc, argv);
  const auto done =
      exportFigure(evaluateNow(std::move(loaded->project)), QString::fromStdString(request.view),
                   localPath(request.output), *options);
  return done ? kAllHold : reportBadInput(done.error());
}

int runReview(const ReviewRequest& request, int& argc, char** argv) {
  auto loaded = loadRequested(request.project);
  if (!loaded) return reportBadInput(loaded.error());
  const auto app = drawingApplication(argc, argv);
  Review review;
  review.fileName = QFileInfo(localPath(request.project.file)).fileName();
  review.snapshot = evaluateNow(std::move(loaded->project));
  review.notes = std::move(loaded->notes);
  const auto done = writeReview(review, localPath(request.folder));
  return done ? kAllHold : reportBadInput(done.error());
}

}  // namespace jw
