#include "app/review.h"

#include <QBuffer>
#include <QDate>
#include <QDir>

#include "app/check_report.h"
#include "app/page_flow.h"
#include "app/project_file.h"
#include "app/review_text.h"
#include "core/checks/cautions.h"
#include "widgets/figures/drive_view.h"
#include "widgets/figures/family_study.h"
#include "widgets/figures/figure_export.h"
#include "widgets/figures/figure_painting.h"
#include "widgets/figures/precision_view.h"
#include "widgets/figures/search_study.h"
#include "widgets/figures/study_painting.h"
#include "widgets/figures/tolerance_view.h"
#include "widgets/pdf_date.h"

namespace jw {
namespace {

constexpr double kBlockGap = 10;       // [pt]
constexpr double kHeadingHeight = 24;  // [pt]
constexpr double kTextSize = 9;        // [pt]
constexpr double kListSize = 8;        // [pt]
constexpr double kWorkingSize = 7.5;   // [pt]

/// [pt]; two figures share a page, the cycle and the families have nearly one of their own.
double heightOf(const QString& figureName) {
  if (figureName == "power") return 150;
  if (figureName == "envelope") return 380;
  return figureName == "cycle" || figureName == "families" ? 560 : 310;
}

void addBlock(PageFlow& flow, const QString& block) {
  flow.addHtml(block);
  flow.addSpace(kBlockGap);
}

void addBlocks(PageFlow& flow, const QStringList& blocks) {
  for (const QString& block : blocks) addBlock(flow, block);
}

/// Whether there is something to draw, of what not every joint has.
bool isForReview(const QString& name, const Snapshot& snapshot) {
  const PrecisionView precision = precisionView(snapshot);
  if (name == "ratio") return hasRatios(snapshot);
  if (name == "precision") return !precision.loop.empty();
  if (name == "efficiency") return !precision.efficiency.empty();
  if (name == "response") return !precision.swing.empty();
  if (name == "toolerror") return !precision.toolError.empty();
  if (name == "drive") return !snapshot.project->active().transmission.empty();
  if (name == "search") return snapshot.search && snapshot.search->base;
  if (name.startsWith("famil")) return snapshot.families && !snapshot.families->choices.empty();
  const bool ofBands =
      name == "tolerance" || name == "distribution" || name == "tornado" || name == "envelopeband";
  return !ofBands || toleranceOf(snapshot) != nullptr;
}

/// All figures that can be drawn, one drawing for each stage.
QStringList figuresOf(const Snapshot& snapshot) {
  QStringList names{"power", "envelope", "cycle", "heat", "overload"};
  const auto add = [&](std::initializer_list<const char*> more) {
    for (const char* name : more) {
      if (isForReview(name, snapshot)) names << name;
    }
  };
  add({"ratio"});
  const auto stages = int(snapshot.project->active().transmission.size());
  for (int k = 0; k < stages; ++k) {
    if (!driveView(snapshot, k).empty()) names << QString("drive%1").arg(k + 1);
  }
  add({"precision", "efficiency", "response", "toolerror", "tolerance", "tornado", "families",
       "search"});
  return names;
}

void addFigures(PageFlow& flow, const Snapshot& snapshot) {
  for (const QString& name : figuresOf(snapshot)) {
    flow.needRoom(kHeadingHeight + heightOf(name));
    flow.addHtml("<h2>" + figureTitle(name) + "</h2>");
    flow.addPicture(heightOf(name), [&](QCPPainter& painter, const QRectF& area) {
      paintFigureContent(painter, area, snapshot, name);
    });
    flow.addSpace(kBlockGap);
  }
}

/// The review with the studies that no figure of a window has worked out, each once for all that
/// show it; catalogues and families only where they are quick.
Review withStudies(Review review) {
  constexpr int kQuickSamples = 2'000;
  Snapshot& snapshot = review.snapshot;
  const auto& project = snapshot.evaluatedProject;
  const bool quick = snapshot.evaluation && snapshot.evaluation->chain &&
                     snapshot.evaluation->cycle->size() <= kQuickSamples;
  snapshot.tolerance = toleranceOf(snapshot);
  if (!quick || project->active().transmission.empty()) return review;
  if (!snapshot.search) {
    snapshot.search = std::make_shared<const SearchStudy>(bundledSearch(project));
  }
  if (!snapshot.families) {
    snapshot.families =
        std::make_shared<const FamilyStudy>(compareFamilies(bundledFamilies(project), {}));
  }
  return review;
}

QByteArray verdictText(const Review& review) {
  const CheckReport report{review.fileName.toStdString(), *review.snapshot.project,
                           *review.snapshot.evaluation, review.notes};
  return QByteArray::fromStdString(checkTable(report));
}

}  // namespace

QByteArray reviewPdf(const Review& given) {
  const Review review = withStudies(given);
  QByteArray bytes;
  QBuffer buffer(&bytes);
  buffer.open(QIODevice::WriteOnly);
  {
    const QString title = QString::fromStdString(review.snapshot.project->title);
    const auto caution = QString::fromUtf8(kCaution.data(), qsizetype(kCaution.size()));
    PageFlow flow(buffer, title.isEmpty() ? "Design review" : title, caution);
    addBlock(flow, reviewHead(review));
    addBlock(flow, reviewVerdictList(review));
    addBlocks(flow, reviewRemarks(review));
    flow.setColumns(2, kListSize);
    addBlock(flow, reviewQuantities(review));
    flow.setColumns(1, kTextSize);
    addFigures(flow, review.snapshot);
    flow.setColumns(2, kListSize);
    addBlocks(flow, reviewInputs(review));
    flow.setColumns(2, kWorkingSize);
    addBlocks(flow, reviewWorkings(review));
    addBlocks(flow, reviewFigureWorkings(review));
    flow.setColumns(1, kTextSize);
    flow.addHtml(reviewCautions());
  }
  setPdfDate(bytes, QDate::currentDate());
  return bytes;
}

tl::expected<void, InputError> writeReview(const Review& given, const QString& folder) {
  if (const auto there = createFolder(folder); !there) return there;
  const Review review = withStudies(given);
  const QDir target(folder);
  auto done = writeFile(target.filePath("review.pdf"), reviewPdf(review));
  for (const QString& name : figureNames()) {
    if (!done) return done;
    if (!isForReview(name, review.snapshot)) continue;
    done = exportFigure(review.snapshot, name, target.filePath(name + ".png"));
  }
  if (!done) return done;
  return writeFile(target.filePath("verdicts.txt"), verdictText(review));
}

}  // namespace jw
