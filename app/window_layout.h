#pragma once

#include <QSize>

namespace jw {

class MainWindow;

inline constexpr QSize kSmallestWindow(1024, 700);
inline constexpr QSize kUsualWindow(1440, 900);

/// Place and proportions of the window, remembered between runs.
struct WindowLayout {
  static void save(const MainWindow& window);
  /// Falls back to the usual layout if what was remembered cannot be used.
  static void restore(MainWindow& window);
};

}  // namespace jw
