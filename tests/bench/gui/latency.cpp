// How long a person waits: from an edit to the picture that shows its result, and from starting the
// program to the first picture. Prints the times; judges nothing.
#include <algorithm>
#include <vector>

#include <QApplication>
#include <QDir>
#include <QElapsedTimer>
#include <QProcess>
#include <QtTest>

#include <fmt/format.h>

#include "app/main_window.h"
#include "core/model/field_catalogue.h"
#include "widgets/theme/theme.h"

namespace jw {
namespace {

constexpr int kEdits = 200;
constexpr int kStarts = 10;

QString firstSample() {
  const QDir folder(JW_SAMPLES_DIR);
  return folder.filePath(folder.entryList({"*.jointwright"}, QDir::Files, QDir::Name).value(0));
}

double milliseconds(const QElapsedTimer& timer) {
  return static_cast<double>(timer.nsecsElapsed()) * 1e-6;
}

void report(const char* what, std::vector<double> times) {
  if (times.empty()) return;
  std::sort(times.begin(), times.end());
  const auto at = [&](double share) {
    return times[static_cast<std::size_t>(share * static_cast<double>(times.size() - 1))];
  };
  fmt::print("{}: p50 {:.1f} ms, p95 {:.1f} ms, worst {:.1f} ms ({} times)\n", what, at(0.5),
             at(0.95), times.back(), times.size());
}

/// Runs the event loop until the evaluation of the edit is on screen and painted.
double timeOfEdit(MainWindow& window, int k) {
  QElapsedTimer timer;
  timer.start();
  window.applyEdit({"Change payload", {}, [k](Project& project) {
                      return setField(project, "load.payloadMass", std::to_string(3000 + k) + " g");
                    }});
  while (!window.document().isEvaluated()) {
    QCoreApplication::processEvents(QEventLoop::WaitForMoreEvents);
  }
  QCoreApplication::sendPostedEvents();
  QCoreApplication::processEvents();  // queued replots and paint events
  return milliseconds(timer);
}

void measureEdits() {
  Prompts prompts;
  MainWindow window(prompts);
  window.resize(1440, 900);
  window.show();
  window.session().openSample(firstSample());
  QTest::qWait(500);
  std::vector<double> times;
  for (int k = 1; k <= kEdits; ++k) times.push_back(timeOfEdit(window, k));
  report("edit to painted picture, 1440x900", times);
}

void measureStarts() {
  std::vector<double> outside;
  for (int k = 0; k < kStarts; ++k) {
    QProcess process;
    QProcessEnvironment environment = QProcessEnvironment::systemEnvironment();
    environment.insert("JW_PROBE", "first-frame");
    process.setProcessEnvironment(environment);
    QElapsedTimer timer;
    timer.start();
    process.start(QCoreApplication::applicationDirPath() + "/jointwright", {firstSample()});
    if (!process.waitForReadyRead(60'000)) continue;
    outside.push_back(milliseconds(timer));
    if (k == 0) fmt::print("the program says: {}", process.readAllStandardOutput().toStdString());
    process.waitForFinished();
  }
  report("start to first evaluated picture", outside);
}

}  // namespace
}  // namespace jw

int main(int argc, char** argv) {
  if (!qEnvironmentVariableIsSet("QT_QPA_PLATFORM")) qputenv("QT_QPA_PLATFORM", "offscreen");
  QApplication app(argc, argv);
  QApplication::setOrganizationName("jointwright-tests");
  QApplication::setApplicationName("jointwright-bench");
  jw::applyTheme(app, jw::ThemeKind::Light);
  jw::measureEdits();
  jw::measureStarts();
  return 0;
}
