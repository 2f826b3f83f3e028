#include "app/recent_files.h"

#include <QCoreApplication>
#include <QDir>
#include <QFileInfo>
#include <QSettings>

#include "app/project_file.h"

namespace jw {
namespace {

constexpr const char* kKey = "recentFiles";

QStringList stored() { return QSettings().value(kKey).toStringList(); }

}  // namespace

QStringList RecentFiles::list() {
  QStringList files = stored();
  files.removeIf([](const QString& file) { return !QFileInfo::exists(file); });
  return files;
}

void RecentFiles::add(const QString& fileName) {
  const QString file = QFileInfo(fileName).absoluteFilePath();
  QStringList files = stored();
  files.removeAll(file);
  files.prepend(file);
  QSettings().setValue(kKey, QStringList(files.mid(0, kMost)));
}

void RecentFiles::remove(const QString& fileName) {
  QStringList files = stored();
  files.removeAll(QFileInfo(fileName).absoluteFilePath());
  QSettings().setValue(kKey, files);
}

QStringList sampleFiles() {
  const QDir folder(QDir(QCoreApplication::applicationDirPath()).filePath(JW_SAMPLES_FOLDER));
  QStringList files;
  for (const QString& name : folder.entryList({"*.jointwright"}, QDir::Files, QDir::Name)) {
    files << folder.canonicalPath() + "/" + name;
  }
  return files;
}

QString sampleTitle(const QString& fileName) {
  const auto loaded = loadProjectFile(fileName);
  const QString title = loaded ? QString::fromStdString(loaded->project.title) : QString();
  return title.isEmpty() ? QFileInfo(fileName).completeBaseName() : title;
}

}  // namespace jw
