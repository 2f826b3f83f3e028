// Commands that draw: they need Qt's GUI, but no display.
#include <QApplication>
#include <QFileInfo>
#include <QRegularExpression>

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

/// What the text says; whether the numbers can be drawn is for exportFigure to tell.
tl::expected<QSizeF, InputError> readSize(const std::string& text) {
  static const QRegularExpression kForm("^([0-9]+(?:\\.[0-9]+)?)x([0-9]+(?:\\.[0-9]+)?)$");
  const auto match = kForm.match(QString::fromStdString(text));
  if (!match.hasMatch()) {
    return tl::unexpected(InputError{"'" + text + "' is no size", "--size",
                                     "write width x height in mm, e.g. 160x110"});
  }
  return QSizeF(match.captured(1).toDouble(), match.captured(2).toDouble());
}

QString localPath(const std::string& text) { return QString::fromLocal8Bit(text.c_str()); }

}  // namespace

int runFigure(const FigureRequest& request, int& argc, char** argv) {
  const auto size = readSize(request.size);
  if (!size) return reportBadInput(size.error());
  auto loaded = loadRequested(request.project);
  if (!loaded) return reportBadInput(loaded.error());
  const auto app = drawingApplication(argc, argv);
  const auto done =
      exportFigure(evaluateNow(std::move(loaded->project)), QString::fromStdString(request.view),
                   localPath(request.output), {.sizeMm = *size, .dpi = request.dpi});
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
