#include "app/window_command.h"

#include <cstdio>

#include <QApplication>
#include <QElapsedTimer>
#include <QIcon>
#include <QTimer>

#include <fmt/format.h>

#include "app/main_window.h"
#include "app/requested_project.h"
#include "app/theme_choice.h"
#include "app/window_layout.h"

namespace jw {
namespace {

/// Prints the time once what is evaluated has been painted, and quits.
void probeFirstFrame(MainWindow& window, const QElapsedTimer& sinceStart) {
  if (qgetenv("JW_PROBE") != "first-frame") return;
  QObject::connect(&window.document(), &Document::snapshotChanged, &window, [&window, sinceStart] {
    if (!window.document().isEvaluated()) return;
    QTimer::singleShot(0, &window, [&window, sinceStart] {
      QCoreApplication::sendPostedEvents();
      window.repaint();
      fmt::print("first-frame {:.1f} ms\n", static_cast<double>(sinceStart.nsecsElapsed()) * 1e-6);
      std::fflush(stdout);
      QCoreApplication::quit();
    });
  });
}

bool hasDisplay() {
  for (const char* name : {"DISPLAY", "WAYLAND_DISPLAY", "QT_QPA_PLATFORM"}) {
    if (!qEnvironmentVariableIsEmpty(name)) return true;
  }
  return false;
}

}  // namespace

int runWindow(const QString& file, int& argc, char** argv) {
  if (!hasDisplay()) {
    return reportBadInput({"there is no display to open a window on", "",
                           "use 'jointwright check', 'figure' or 'review', which need none"});
  }
  QElapsedTimer sinceStart;
  sinceStart.start();
  QApplication app(argc, argv);
  QApplication::setOrganizationName("jointwright");
  QApplication::setApplicationName("jointwright");
  QApplication::setApplicationVersion(JW_VERSION);
  QApplication::setDesktopFileName("jointwright");
  QApplication::setWindowIcon(QIcon(":/icons/jointwright.svg"));
  startTheme();
  Prompts prompts;
  MainWindow window(prompts);
  WindowLayout::restore(window);
  window.show();
  if (file.isEmpty()) {
    window.session().offerUnnamedWork();
  } else {
    window.session().open(file);
  }
  probeFirstFrame(window, sinceStart);
  return QApplication::exec();
}

}  // namespace jw
