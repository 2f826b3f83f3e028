#include "app/autosave.h"

#include <csignal>

#include <QCoreApplication>
#include <QDir>
#include <QFile>
#include <QFileInfo>
#include <QStandardPaths>

namespace jw {
namespace {

constexpr int kDelayMs = 3000;

QDir unnamedFolder() {
  QDir folder(QStandardPaths::writableLocation(QStandardPaths::AppLocalDataLocation));
  folder.mkpath("unsaved");
  return QDir(folder.filePath("unsaved"));
}

/// "untitled-4711.autosave~": the number of the process keeps two windows apart.
QString unnamedFile() {
  return unnamedFolder().filePath(
      QString("untitled-%1.autosave~").arg(QCoreApplication::applicationPid()));
}

/// Whether the project takes long to write.
bool isLong(const Project& project) {
  constexpr std::size_t kMany = 50'000;
  std::size_t rows = 0;
  for (const Segment& segment : project.cycle.segments) rows += segment.table.time.size();
  for (const Cycle& cycle : project.otherCycles) {
    for (const Segment& segment : cycle.segments) rows += segment.table.time.size();
  }
  return rows > kMany;
}

bool processIsAlive(const QString& autosaveFile) {
  const auto number = QFileInfo(autosaveFile).fileName().section('-', 1).section('.', 0, 0);
  const int process = number.toInt();
  return process > 0 && ::kill(process, 0) == 0;
}

}  // namespace

Autosave::Autosave(Document& document, QObject* parent) : QObject(parent), document_(document) {
  timer_.setSingleShot(true);
  timer_.setInterval(kDelayMs);
  connect(&timer_, &QTimer::timeout, this, &Autosave::writeNow);
  connect(&document_, &Document::stateChanged, this, &Autosave::follow);
}

QString Autosave::fileBeside(const QString& projectFile) {
  const QFileInfo info(projectFile);
  return info.absoluteDir().filePath("." + info.fileName() + ".autosave~");
}

std::optional<KeptWork> Autosave::find(const QString& projectFile, const Project& onDisk) {
  const QString file = fileBeside(projectFile);
  if (!QFile::exists(file)) return std::nullopt;
  auto kept = loadProjectFile(file);
  if (!kept || kept->project == onDisk) return std::nullopt;
  return KeptWork{file, std::move(kept->project)};
}

std::vector<KeptWork> Autosave::findUnnamed() {
  std::vector<KeptWork> all;
  const QDir folder = unnamedFolder();
  for (const QString& name : folder.entryList({"untitled-*.autosave~"}, QDir::Files)) {
    const QString file = folder.filePath(name);
    if (processIsAlive(file)) continue;
    if (auto kept = loadProjectFile(file)) all.push_back({file, std::move(kept->project)});
  }
  return all;
}

QString Autosave::currentFile() const {
  return document_.fileName().isEmpty() ? unnamedFile() : fileBeside(document_.fileName());
}

void Autosave::follow() {
  if (!document_.isModified()) {
    timer_.stop();
    remove();
  } else if (!timer_.isActive()) {
    timer_.start();
  }
}

void Autosave::writeNow() {
  if (!document_.isModified()) return;
  if (writing_) return timer_.start();
  const QString file = currentFile();
  if (!written_.isEmpty() && written_ != file) remove();
  if (isLong(*document_.project())) return writeBeside(file);
  if (const auto done = saveProjectFile(file, *document_.project()); !done)
    complain(done.error());
  else
    written_ = file;
}

/// Writing a million rows takes most of a second: not while the window waits.
void Autosave::writeBeside(const QString& file) {
  written_ = file;
  writing_ = true;
  writer_ = std::jthread([this, file, project = document_.project()] {
    const auto done = saveProjectFile(file, *project);
    writing_ = false;
    if (done) return;
    QMetaObject::invokeMethod(
        this, [this, error = done.error()] { complain(error); }, Qt::QueuedConnection);
  });
}

/// Once: it would come again every few seconds.
void Autosave::complain(const InputError& error) {
  if (complained_) return;
  complained_ = true;
  emit failed(error);
}

void Autosave::remove() {
  timer_.stop();
  if (writer_.joinable()) writer_.join();
  if (!written_.isEmpty()) QFile::remove(written_);
  written_.clear();
}

}  // namespace jw
