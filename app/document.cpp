#include "app/document.h"

#include <algorithm>
#include <stdexcept>

#include <QCryptographicHash>
#include <QFile>
#include <QFileInfo>

#include "core/studies/sensitivity.h"

namespace jw {
namespace {

// An evaluation that comes sooner replaces the old one without a flicker of "stale" between.
constexpr int kStaleAfterMs = 60;
// Sensitivities wait until a hand on a slider or key is through.
constexpr int kSlopesAfterMs = 100;

// Tells files apart without keeping them: one with a long table has 100 MB.
QByteArray digestOf(const QByteArray& bytes) {
  return QCryptographicHash::hash(bytes, QCryptographicHash::Sha256);
}

}  // namespace

Document::Document(QObject* parent) : QObject(parent), history_(std::make_shared<const Project>()) {
  staleTimer_.setSingleShot(true);
  staleTimer_.setInterval(kStaleAfterMs);
  connect(&staleTimer_, &QTimer::timeout, this, &Document::showStale);
  slopesTimer_.setSingleShot(true);
  slopesTimer_.setInterval(kSlopesAfterMs);
  connect(&slopesTimer_, &QTimer::timeout, this, &Document::studySensitivities);
  connect(&evaluator_, &Evaluator::evaluated, this, &Document::receive);
  connect(&evaluator_, &Evaluator::failed, this, &Document::evaluationFailed);
}

QString Document::displayName() const {
  return fileName_.isEmpty() ? tr("Untitled") : QFileInfo(fileName_).completeBaseName();
}

tl::expected<void, InputError> Document::apply(const Edit& edit) {
  auto next = std::make_shared<Project>(*project());
  if (auto done = edit.apply(*next); !done) return done;
  if (next->variants.empty() || next->activeVariant < 0 ||
      static_cast<std::size_t>(next->activeVariant) >= next->variants.size()) {
    throw std::logic_error("an edit left the project without an active variant");
  }
  if (history_.push(std::move(next), edit.description, edit.gesture)) publish();
  return {};
}

void Document::undo() {
  if (!history_.canUndo()) return;
  history_.undo();
  publish();
}

void Document::redo() {
  if (!history_.canRedo()) return;
  history_.redo();
  publish();
}

void Document::startNew(Project project) {
  reset(std::make_shared<const Project>(std::move(project)), {}, {});
}

void Document::recover(Project project, const QString& fileName) {
  const QByteArray onDisk = fileName.isEmpty() ? QByteArray() : readFile(fileName).value_or("");
  history_ = History(std::make_shared<const Project>(std::move(project)));
  history_.markNeverClean();
  fileName_ = fileName;
  digestOnDisk_ = digestOf(onDisk);
  beginProject();
}

void Document::show(const LoadedProject& loaded, const QString& fileName) {
  reset(std::make_shared<const Project>(loaded.project), QFileInfo(fileName).absoluteFilePath(),
        loaded.bytes);
}

tl::expected<void, InputError> Document::save(const QString& fileName) {
  const QByteArray bytes = projectBytes(*project());
  if (auto done = writeFile(fileName, bytes); !done) return done;
  fileName_ = QFileInfo(fileName).absoluteFilePath();
  digestOnDisk_ = digestOf(bytes);
  history_.markClean();
  emit stateChanged();
  return {};
}

bool Document::fileChangedOutside() const {
  if (fileName_.isEmpty() || !QFile::exists(fileName_)) return false;
  const auto bytes = readFile(fileName_);
  return bytes && digestOf(*bytes) != digestOnDisk_;
}

void Document::setEntryWrong(bool wrong) {
  if (wrong == entryWrong_) return;
  entryWrong_ = wrong;
  snapshot_.stale = wrong || snapshot_.revision != revision_;
  emit snapshotChanged(snapshot_);
}

void Document::reset(ProjectPtr project, const QString& fileName, const QByteArray& bytesOnDisk) {
  history_ = History(std::move(project));
  fileName_ = fileName;
  digestOnDisk_ = digestOf(bytesOnDisk);
  beginProject();
}

void Document::beginProject() {
  snapshot_ = {};
  entryWrong_ = false;
  firstRevision_ = revision_ + 1;
  publish();
}

void Document::publish() {
  snapshot_.project = project();
  snapshot_.stale = true;
  slopesTimer_.stop();
  slopes_.stop();
  evaluator_.request(project(), ++revision_);
  if (!staleTimer_.isActive()) staleTimer_.start();
  emit projectChanged();
  emit stateChanged();
}

void Document::receive(Snapshot snapshot) {
  if (snapshot.revision < std::max(snapshot_.revision, firstRevision_)) return;
  snapshot.stale = snapshot.revision != revision_ || entryWrong_;
  snapshot.project = project();
  snapshot_ = std::move(snapshot);
  if (snapshot_.revision == revision_) {
    staleTimer_.stop();
    slopesTimer_.start();
  }
  emit snapshotChanged(snapshot_);
}

void Document::studySensitivities() {
  slopes_.request([this, project = snapshot_.evaluatedProject](const StudyContext& context) {
    auto found =
        std::make_shared<const Sensitivities>(sensitivities(*project, {context.stop, {}, 0}));
    if (found->stopped) return;
    context.post([this, project, found] {
      if (snapshot_.evaluatedProject != project) return;
      snapshot_.sensitivities = found;
      emit sensitivitiesChanged(snapshot_);
    });
  });
}

void Document::showStale() {
  if (snapshot_.revision != revision_) emit snapshotChanged(snapshot_);
}

}  // namespace jw
