// How long a person waits: from an edit to the picture that shows its result, and from starting the
// program to the first picture. Prints the times; judges nothing.
#include <sys/resource.h>

#include <algorithm>
#include <cmath>
#include <vector>

#include <QApplication>
#include <QDir>
#include <QElapsedTimer>
#include <QProcess>
#include <QThread>
#include <QtTest>

#include <fmt/format.h>

#include "app/main_window.h"
#include "core/model/field_catalogue.h"
#include "widgets/figures/ratio_figure.h"
#include "widgets/panels/log_dialog.h"
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

/// The same with each figure in front; what a figure works out beside the window comes after.
void measureTabs() {
  Prompts prompts;
  MainWindow window(prompts);
  window.resize(1440, 900);
  window.show();
  window.session().openSample(firstSample());
  for (const char* figure : {"envelope", "cycle", "heat", "ratio", "drive", "precision",
                             "tolerance", "families", "search"}) {
    window.figures().activePane()->setCurrent(figure);
    QTest::qWait(1500);
    std::vector<double> times;
    for (int k = 1; k <= kEdits / 2; ++k) times.push_back(timeOfEdit(window, k));
    report(fmt::format("edit to painted picture, {} in front", figure).c_str(), times);
  }
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

/// Runs the event loop until `done`.
template <class Done>
double timeUntil(Done done) {
  QElapsedTimer timer;
  timer.start();
  while (!done()) {
    QCoreApplication::processEvents();
    QThread::usleep(300);  // leaves the cores to what is waited for
  }
  return milliseconds(timer);
}

RatioFigure& ratioInFront(MainWindow& window) {
  window.figures().activePane()->setCurrent("ratio");
  return *static_cast<RatioFigure*>(window.figures().activePane()->current());
}

/// From an edit to the rough and to the whole sweep of 200 ratios that belongs to it.
void measureSweeps(MainWindow& window, RatioFigure& figure) {
  std::vector<double> rough, whole;
  for (int k = 1; k <= kEdits / 4; ++k) {
    const auto before = figure.ratio().sweep();
    QElapsedTimer timer;
    timer.start();
    window.applyEdit({"Change payload", {}, [k](Project& project) {
                        return setField(project, "load.payloadMass",
                                        std::to_string(3000 + k) + " g");
                      }});
    timeUntil([&] { return figure.ratio().sweep() != before; });
    rough.push_back(milliseconds(timer));
    timeUntil([&] { return !figure.ratio().isPreview() && !figure.thread().isBusy(); });
    whole.push_back(milliseconds(timer));
  }
  report("edit to rough sweep of 200 ratios", rough);
  report("edit to whole sweep of 200 ratios", whole);
}

/// From a move of the handle until the window shows what follows from it.
void measureDrag(MainWindow& window, RatioFigure& figure) {
  auto& canvas = *figure.findChild<RatioCanvas*>();
  const auto x = int(canvas.plot().pixelOf(canvas.plot().view().present));
  const QPoint at(x, canvas.height() / 2);
  QTest::mousePress(&canvas, Qt::LeftButton, {}, at);
  std::vector<double> times;
  for (int k = 1; k <= kEdits / 2; ++k) {
    const QPoint to = at + QPoint(k % 40 - 20, 0);
    QMouseEvent move(QEvent::MouseMove, to, canvas.mapToGlobal(to), Qt::NoButton, Qt::LeftButton,
                     {});
    QElapsedTimer timer;
    timer.start();
    QApplication::sendEvent(&canvas, &move);
    timeUntil([&] { return window.document().isEvaluated(); });
    QCoreApplication::sendPostedEvents();
    QCoreApplication::processEvents();
    times.push_back(milliseconds(timer));
  }
  QTest::mouseRelease(&canvas, Qt::LeftButton, {}, at);
  report("drag of the ratio to painted window", times);
}

void measureRatio() {
  Prompts prompts;
  MainWindow window(prompts);
  window.resize(1440, 900);
  window.show();
  window.session().openSample(firstSample());
  RatioFigure& figure = ratioInFront(window);
  QTest::qWait(1000);
  std::vector<double> times;
  for (int k = 1; k <= kEdits / 2; ++k) times.push_back(timeOfEdit(window, k));
  report("edit to painted picture, Ratio in front", times);
  measureSweeps(window, figure);
  measureDrag(window, figure);
}

/// A log of a million rows, some 32 MB: an invented joint that swings.
QString longLog(const QTemporaryDir& folder) {
  QString name = folder.filePath("long.csv");
  QFile file(name);
  if (!file.open(QIODevice::WriteOnly)) return {};
  std::string text = "t [ms];angle [deg];M_joint [Nm]\n";
  for (int i = 0; i < 1'000'000; ++i) {
    const double t = 1e-3 * i;
    text += fmt::format("{};{:.5f};{:.4f}\n", i, 30 * std::sin(2.4 * t) + 1e-3 * (i % 7),
                        18 * std::cos(0.5 * std::sin(2.4 * t)) - 6 * std::sin(2.4 * t));
  }
  file.write(text.data(), static_cast<qint64>(text.size()));
  return name;
}

double peakMegabytes() {
  rusage use{};
  getrusage(RUSAGE_SELF, &use);
  return static_cast<double>(use.ru_maxrss) / 1e3;
}

void measureLogFrames(LogCanvas& canvas) {
  std::vector<double> times;
  const double length = canvas.view().length;
  for (const double share : {1.0, 0.3, 0.1, 0.03, 0.01, 1e-3, 1e-4}) {
    for (int k = 0; k < 10; ++k) {
      const double from = (0.2 + 0.01 * share * k) * length;
      QElapsedTimer timer;
      timer.start();
      canvas.setSeen(from, from + share * length);
      canvas.replot(QCustomPlot::rpImmediateRefresh);
      times.push_back(milliseconds(timer));
    }
  }
  report("frame of the log's curves at seven zooms", times);
}

void measureLog() {
  const QTemporaryDir folder;
  const QString file = longLog(folder);
  Prompts prompts;
  MainWindow window(prompts);
  window.resize(1440, 900);
  window.show();
  window.session().openSample(firstSample());
  QTest::qWait(500);
  fmt::print("before a log of a million rows: peak {:.0f} MB\n", peakMegabytes());
  window.openLog(file);
  auto* dialog = window.findChild<LogDialog*>();
  const double read = timeUntil([&] { return dialog->study().log != nullptr; });
  const double all = read + timeUntil([&] { return !dialog->isBusy(); });
  fmt::print(
      "read after {:.0f} ms, smoothed, compared and fitted after {:.0f} ms, peak {:.0f} MB\n", read,
      all, peakMegabytes());
  dialog->findChild<QTabWidget*>("log.pages")->setCurrentIndex(1);
  QTest::qWait(100);
  measureLogFrames(dialog->motionPage().canvas());
  dialog->findChild<QPushButton*>("log.useCycle")->click();
  const double used = timeUntil([&] {
    return window.document().project()->cycle.segments.size() == 1 &&
           window.document().isEvaluated();
  });
  dialog->close();
  QTest::qWait(100);
  fmt::print("cycle of a million rows evaluated after {:.0f} ms, peak {:.0f} MB\n", used,
             peakMegabytes());
  fmt::print("edit with it to painted picture: {:.0f} ms\n", timeOfEdit(window, 1));
}

}  // namespace
}  // namespace jw

int main(int argc, char** argv) {
  if (!qEnvironmentVariableIsSet("QT_QPA_PLATFORM")) qputenv("QT_QPA_PLATFORM", "offscreen");
  QApplication app(argc, argv);
  QApplication::setOrganizationName("jointwright-tests");
  QApplication::setApplicationName("jointwright-bench");
  jw::applyTheme(app, jw::ThemeKind::Light);
  const std::string_view only = argc > 1 ? argv[1] : "";  // or "starts", "tabs", "ratio", "log"
  if (only.empty() || only == "edits") jw::measureEdits();
  if (only.empty() || only == "starts") jw::measureStarts();
  if (only.empty() || only == "tabs") jw::measureTabs();
  if (only.empty() || only == "ratio") jw::measureRatio();
  if (only.empty() || only == "log") jw::measureLog();
  return 0;
}
