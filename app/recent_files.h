#pragma once

#include <QStringList>

namespace jw {

/// The project files opened last, newest first, kept in the settings.
class RecentFiles {
 public:
  static constexpr int kMost = 10;
  /// Those that still exist.
  static QStringList list();
  static void add(const QString& fileName);
  static void remove(const QString& fileName);
};

/// The sample projects that come with the program, in order.
QStringList sampleFiles();

/// The title in a sample, or its file name: for the menu.
QString sampleTitle(const QString& fileName);

}  // namespace jw
