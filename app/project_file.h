#pragma once

#include <vector>

#include <QByteArray>
#include <QString>
#include <tl/expected.hpp>

#include "core/model/project.h"
#include "core/quantity/quantity.h"

namespace jw {

/// Ending of project files, without the dot.
inline constexpr const char* kProjectSuffix = "jointwright";

/// Largest project file that is read [bytes].
inline constexpr qint64 kLargestProjectFile = 256LL << 20;

struct LoadedProject {
  Project project;
  std::vector<InputError> notes;
  QByteArray bytes;  ///< the file as it was read
};

/// The whole file; fails naming it if it is missing, a folder, unreadable or too large.
tl::expected<QByteArray, InputError> readFile(const QString& fileName);

/// Replaces the file in one step: either the old content or the new one is there, whatever happens.
/// Fails naming the file or the folder that is missing.
tl::expected<void, InputError> writeFile(const QString& fileName, const QByteArray& bytes);

/// Creates the folder and its parents if they are not there. Fails naming the file that is in the
/// way, or the folder that cannot be made.
tl::expected<void, InputError> createFolder(const QString& folder);

tl::expected<LoadedProject, InputError> loadProjectFile(const QString& fileName);

/// The bytes that saveProjectFile writes.
QByteArray projectBytes(const Project& project);

tl::expected<void, InputError> saveProjectFile(const QString& fileName, const Project& project);

}  // namespace jw
