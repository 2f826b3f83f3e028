// Commands that draw: they need Qt's GUI, but no display.
#include <QApplication>
#include <QFileInfo>
#include <QHashFunctions>
#include <QRegularExpression>

#include <fmt/format.h>

#include "app/check_report.h"
#include "app/command_line.h"
#include "app/commands.h"
#include "app/requested_project.h"
#include "app/review.h"
#include "widgets/figures/drive_view.h"
#include "widgets/figures/figure_export.h"
#include "widgets/theme/theme.h"

namespace jw {
namespace {

/// The application on a platform without a screen, unless one was asked for. Hashes are seeded
/// alike in every run: a PDF holds its fonts in the order of one.
std::unique_ptr<QApplication> drawingApplication(int& argc, char** argv) {
  if (!qEnvironmentVariableIsSet("QT_QPA_PLATFORM")) qputenv("QT_QPA_PLATFORM", "offscreen");
  QHashSeed::setDeterministicGlobalSeed();
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

/// Fails for the drawing of a stage that the joint does not have.
tl::expected<void, InputError> checkStage(const std::string& view, const Project& project) {
  const int stage = driveStageOf(QString::fromStdString(view));
  const auto stages = static_cast<int>(project.active().transmission.size());
  if (stage < -1 || (stages > 0 && stage < stages)) return {};
  const std::string where = "--view " + view;
  if (stages == 0) {
    return tl::unexpected(InputError{"this joint has no stages", where, "choose another figure"});
  }
  const bool one = stages == 1;
  return tl::unexpected(
      InputError{one ? "this joint has one stage" : fmt::format("this joint has {} stages", stages),
                 where, one ? "choose drive1" : fmt::format("choose drive1 to drive{}", stages)});
}

QString localPath(const std::string& text) { return QString::fromLocal8Bit(text.c_str()); }

}  // namespace

int runFigure(const FigureRequest& request, int& argc, char** argv) {
  const auto size = readSize(request.size);
  if (!size) return reportBadInput(size.error());
  auto loaded = loadRequested(request.project);
  if (!loaded) return reportBadInput(loaded.error());
  if (const auto known = checkStage(request.view, loaded->project); !known) {
    return reportBadInput(known.error());
  }
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
