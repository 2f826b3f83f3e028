#include "app/project_file.h"

#include <QDir>
#include <QFile>
#include <QFileInfo>
#include <QSaveFile>

#include "core/files/project_text.h"

namespace jw {
namespace {

InputError fileError(const QString& what, const QString& fileName, const char* remedy) {
  return {what.toStdString(), QDir::toNativeSeparators(fileName).toStdString(), remedy};
}

}  // namespace

tl::expected<QByteArray, InputError> readFile(const QString& fileName) {
  const QFileInfo info(fileName);
  if (!info.exists()) {
    return tl::unexpected(fileError("there is no such file", fileName, "check the name"));
  }
  if (info.isDir()) {
    return tl::unexpected(fileError("this is a folder", fileName, "name a file inside it"));
  }
  if (info.size() > kLargestProjectFile) {
    return tl::unexpected(fileError("the file is larger than 256 MiB", fileName,
                                    "a project is far smaller; check the name"));
  }
  QFile file(fileName);
  if (!file.open(QIODevice::ReadOnly)) {
    return tl::unexpected(
        fileError("cannot be read: " + file.errorString(), fileName, "check that you may read it"));
  }
  return file.readAll();
}

tl::expected<void, InputError> writeFile(const QString& fileName, const QByteArray& bytes) {
  const QFileInfo info(fileName);
  if (info.isDir()) {
    return tl::unexpected(fileError("this is a folder", fileName, "name a file inside it"));
  }
  if (!info.absoluteDir().exists()) {
    return tl::unexpected(fileError("there is no such folder", info.absolutePath(),
                                    "create it first or choose another"));
  }
  QSaveFile file(fileName);
  const bool written = file.open(QIODevice::WriteOnly) && file.write(bytes) == bytes.size();
  if (!written || !file.commit()) {
    return tl::unexpected(fileError("cannot be written: " + file.errorString(), fileName,
                                    "check that you may write there and that space is left"));
  }
  return {};
}

tl::expected<void, InputError> createFolder(const QString& folder) {
  const QString whole = QDir(folder).absolutePath();
  QFileInfo there(whole);
  while (!there.exists() && !there.isRoot()) there = QFileInfo(there.absolutePath());
  if (there.exists() && !there.isDir()) {
    return tl::unexpected(
        fileError("this is a file, no folder", there.filePath(), "name a folder or a new one"));
  }
  if (QDir().mkpath(whole)) return {};
  return tl::unexpected(fileError("the folder cannot be created", folder,
                                  "check that you may write there or choose another"));
}

tl::expected<LoadedProject, InputError> loadProjectFile(const QString& fileName) {
  auto bytes = readFile(fileName);
  if (!bytes) return tl::unexpected(bytes.error());
  const std::string name = QDir::toNativeSeparators(fileName).toStdString();
  auto read = readProject({bytes->constData(), static_cast<std::size_t>(bytes->size())}, name);
  if (!read) return tl::unexpected(read.error());
  return LoadedProject{std::move(read->project), std::move(read->notes), std::move(*bytes)};
}

QByteArray projectBytes(const Project& project) {
  return QByteArray::fromStdString(writeProject(project));
}

tl::expected<void, InputError> saveProjectFile(const QString& fileName, const Project& project) {
  return writeFile(fileName, projectBytes(project));
}

}  // namespace jw
