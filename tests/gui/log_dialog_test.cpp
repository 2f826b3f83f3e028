// Opening, mending, closing and fitting measured logs as a person does. The logs are invented; the
// load behind their torque is known.
#include <QSignalSpy>
#include <QTabBar>

#include "tests/gui/log_support.h"
#include "widgets/theme/number_text.h"

namespace jw::test {
namespace {

constexpr double kDegree = M_PI / 180;

TEST_F(LogDialogTest, GuessesAreShownAndTheLogIsRead) {
  open(dialog, InventedLog().text());
  ASSERT_TRUE(dialog.study().log) << dialog.message().toStdString();
  EXPECT_EQ(dialog.study().log->rows(), 4000U);
  EXPECT_EQ(find<QComboBox>("log.delimiter")->currentText(), "semicolon");
  EXPECT_EQ(find<QComboBox>("log.decimal")->currentText(), "point");
  EXPECT_EQ(find<QComboBox>("log.role0")->currentText(), "time");
  EXPECT_EQ(find<QComboBox>("log.unit0")->currentText(), "ms");
  EXPECT_EQ(find<QComboBox>("log.role1")->currentText(), "position");
  EXPECT_EQ(find<QComboBox>("log.role2")->currentText(), "joint torque");
  EXPECT_EQ(find<QComboBox>("log.role3")->currentText(), "not used");
  auto* table = find<QTableWidget>("log.columns");
  EXPECT_EQ(table->item(int(LogHead::Name), 1)->text(), "angle [deg]");
  EXPECT_FALSE(table->item(int(LogHead::Reason), 1)->text().isEmpty());
  EXPECT_EQ(table->item(int(LogHead::Count), 0)->text(), "0.000");
  EXPECT_TRUE(find<QTabWidget>("log.pages")->isTabEnabled(2));
  EXPECT_TRUE(find<QLabel>("log.head")->text().contains(fixedNumber(4000, 0) + " rows"));
}

TEST_F(LogDialogTest, AnotherUnitIsReadAnew) {
  open(dialog, InventedLog().text());
  const double degrees = dialog.study().log->position[100];
  auto* unit = find<QComboBox>("log.unit1");
  unit->setFocus();
  unit->setCurrentIndex(unit->findData("rad"));
  emit unit->activated(unit->currentIndex());
  settle(dialog);
  ASSERT_TRUE(dialog.study().log) << dialog.message().toStdString();
  EXPECT_NEAR(dialog.study().log->position[100], degrees / kDegree, 1e-9);
}

TEST_F(LogDialogTest, KeysTurnASign) {
  dialog.show();
  open(dialog, InventedLog().text());
  const double before = dialog.study().log->torque[100];
  QTest::keyClick(find<QComboBox>("log.sign2"), Qt::Key_Down);
  settle(dialog);
  ASSERT_TRUE(dialog.study().log) << dialog.message().toStdString();
  EXPECT_EQ(dialog.study().log->torque[100], -before);
  auto* mends = find<QTableWidget>("log.mends");
  EXPECT_TRUE(mends->item(0, 0)->text().contains("sign of the joint torque"));
}

TEST_F(LogDialogTest, MendsAreListedAndGapsMarked) {
  InventedLog log;
  log.gapAfter = 2000;
  log.duplicateEvery = 500;
  open(dialog, log.text());
  ASSERT_TRUE(dialog.study().log) << dialog.message().toStdString();
  QString all;
  auto* mends = find<QTableWidget>("log.mends");
  for (int r = 0; r < mends->rowCount(); ++r)
    all += mends->item(r, 0)->text() + " @ " + mends->item(r, 1)->text() + "\n";
  EXPECT_TRUE(all.contains("8 rows repeat")) << all.toStdString();
  EXPECT_TRUE(all.contains("502")) << all.toStdString();  // 500 rows below one line of names
  EXPECT_TRUE(all.contains("1 gap")) << all.toStdString();
  const LogView& view = dialog.motionPage().canvas().view();
  ASSERT_EQ(view.gaps.size(), 1U);
  EXPECT_NEAR(view.gaps[0].from, 4.0, 1e-9);
  EXPECT_NEAR(view.gaps[0].to, 4.502, 1e-9);
}

// The smoother's response at the frequency that it is said to reach is 1/√2 (derivation beside
// smootherBandwidth): 0.687423 over the window.
TEST_F(LogDialogTest, WindowAndReachFollowEachOther) {
  open(dialog, InventedLog().text());
  auto* window = find<QDoubleSpinBox>("log.window");
  auto* reach = find<QDoubleSpinBox>("log.reach");
  EXPECT_NEAR(window->value(), 40, 1e-9);
  EXPECT_NEAR(reach->value(), 687.423 / 40, 1e-3);
  reach->setValue(5);
  settle(dialog);
  EXPECT_NEAR(window->value(), 687.423 / 5, 1e-3);
  EXPECT_NEAR(dialog.study().curves->motion.window, 0.1374846, 1e-6);
  EXPECT_TRUE(find<QLabel>("log.effect")->text().contains("rms"));
}

TEST_F(LogDialogTest, TheStretchBecomesTheCycleInOneStep) {
  open(dialog, InventedLog().text());
  auto* from = find<QLineEdit>("log.from");
  from->setFocus();
  from->selectAll();
  QTest::keyClicks(from, "1 s");
  QTest::keyClick(from, Qt::Key_Return);
  settle(dialog);
  ASSERT_TRUE(dialog.study().join && *dialog.study().join);
  QSignalSpy asked(&dialog, &LogDialog::editRequested);
  find<QPushButton>("log.useCycle")->click();
  ASSERT_TRUE(asked.wait(10'000));
  Project project;
  project.cycle.segments.resize(3);
  ASSERT_TRUE(asked[0][0].value<Edit>().apply(project));
  ASSERT_EQ(project.cycle.segments.size(), 1U);
  const Segment& segment = project.cycle.segments[0];
  EXPECT_EQ(segment.name, "run");
  EXPECT_EQ(segment.law, MotionLaw::Table);
  EXPECT_EQ(segment.table.time.size(), 3500U);
  EXPECT_NEAR(project.cycle.startAngle, InventedLog::position(1), 1e-4);
  EXPECT_NEAR(segment.table.angle.back(), 0, 1e-9);  // closed
}

TEST_F(LogDialogTest, TheFitFindsTheLoadAndSetsWhatIsTicked) {
  open(dialog, InventedLog().text());
  ASSERT_TRUE(dialog.study().fit && *dialog.study().fit);
  const LoadFit& fit = **dialog.study().fit;
  for (const auto& [term, truth] :
       {std::pair{LoadTerm::Inertia, 2.0}, {LoadTerm::GravityCos, 18.0}, {LoadTerm::Coulomb, 1.5}})
    EXPECT_NEAR(fit[term].value, truth, 4 * fit[term].uncertainty + 0.01) << nameOf(term);
  auto* edits = find<QTableWidget>("log.edits");
  ASSERT_GT(edits->rowCount(), 2);
  int inertia = -1;
  for (int r = 0; r < edits->rowCount(); ++r) {
    const bool wanted = edits->item(r, 0)->text() == "Link inertia";
    if (wanted) inertia = r;
    edits->item(r, 0)->setCheckState(wanted ? Qt::Checked : Qt::Unchecked);
  }
  ASSERT_GE(inertia, 0);
  QSignalSpy asked(&dialog, &LogDialog::editRequested);
  find<QPushButton>("log.applyFit")->click();
  ASSERT_EQ(asked.count(), 1);
  Project project;
  ASSERT_TRUE(asked[0][0].value<Edit>().apply(project));
  EXPECT_NEAR(project.load.inertia, 2, 0.02);
  EXPECT_EQ(project.load.coulombFriction, Load{}.coulombFriction);
}

TEST_F(LogDialogTest, TermsCanBeLeftOut) {
  open(dialog, InventedLog().text());
  find<QTableWidget>("log.terms")->item(int(LoadTerm::Offset), 0)->setCheckState(Qt::Unchecked);
  settle(dialog);
  ASSERT_TRUE(dialog.study().fit && *dialog.study().fit);
  EXPECT_FALSE((*dialog.study().fit)->has(LoadTerm::Offset));
}

TEST_F(LogDialogTest, EdgesAreDraggedAndTheWheelZooms) {
  dialog.resize(1200, 760);
  dialog.show();
  open(dialog, InventedLog().text());
  find<QTabWidget>("log.pages")->setCurrentIndex(1);
  LogCanvas& canvas = dialog.motionPage().canvas();
  QTest::qWait(50);
  const double length = canvas.view().length;
  const QPoint edge(int(canvas.pixelOf(0)), canvas.height() / 2);
  const QPoint to(int(canvas.pixelOf(length / 4)), canvas.height() / 2);
  QTest::mousePress(&canvas, Qt::LeftButton, {}, edge);
  QTest::mouseMove(&canvas, (edge + to) / 2);
  QTest::mouseMove(&canvas, to);
  QTest::mouseRelease(&canvas, Qt::LeftButton, {}, to);
  EXPECT_NEAR(canvas.stretch().from, length / 4, length / 300);
  settle(dialog);
  QWheelEvent wheel(QPointF(to), canvas.mapToGlobal(QPointF(to)), {}, QPoint(0, 480), Qt::NoButton,
                    Qt::NoModifier, Qt::NoScrollPhase, false);
  QApplication::sendEvent(&canvas, &wheel);
  EXPECT_NEAR(canvas.seen().to - canvas.seen().from, length * std::pow(0.85, 4), 0.01 * length);
  QTest::keyClick(&canvas, Qt::Key_Home);
  EXPECT_NEAR(canvas.seen().to, length, 1e-9);
}

struct BadLog {
  const char* name;
  const char* text;
  const char* said;
};

const BadLog kBadLogs[] = {
    {"empty", "", "no lines"},
    {"header only", "t [s],q [deg]\n", "line 1: there are no rows of numbers"},
    {"ragged", "t [s],q [deg]\n0,1\n1,2\n2\n3,4\n4,5\n5,6\n", "line 4: 1 values"},
    {"no number", "t [s],q [deg]\n0,1\n1,abc\n2,3\n3,4\n4,5\n", "line 3, column 2 \"q [deg]\""},
    {"backwards", "t [s],q [deg]\n0,1\n1,2\n0.5,3\n3,4\n4,5\n", "line 4, column 1 \"t [s]\""},
    {"far away", "t [s],q [rad]\n0,1\n1,1e9\n2,3\n3,4\n4,5\n", "the position is 1e+09 rad"},
    {"mixed signs", "t [s];q [deg]\n0;1,5\n1;2,5\n2;3.5\n3;4,5\n4;5,5\n",
     "line 4, column 2 \"q [deg]\": \"3.5\" has a decimal point"},
    {"two bytes", "\0\0", "no lines"},
};

// Each of the specification's bad inputs; the places are counted by hand.
TEST_F(LogDialogTest, BadLogsAreRefusedWithLineAndColumn) {
  QSignalSpy edits(&dialog, &LogDialog::editRequested);
  open(dialog, InventedLog().text());
  for (const BadLog& bad : kBadLogs) {
    open(dialog, bad.text, QString("%1.csv").arg(bad.name));
    EXPECT_TRUE(dialog.message().contains(bad.said))
        << bad.name << ": " << dialog.message().toStdString();
    EXPECT_FALSE(dialog.study().log) << bad.name;
    EXPECT_FALSE(find<QTabWidget>("log.pages")->isTabEnabled(1)) << bad.name;
  }
  EXPECT_EQ(edits.count(), 0);
}

TEST_F(LogDialogTest, AFileOfFiveGigabytesIsRefusedUnread) {
  const QString name = folder.filePath("huge.csv");
  QFile file(name);
  ASSERT_TRUE(file.open(QIODevice::WriteOnly));
  file.write("t,q\n0,1\n");
  ASSERT_TRUE(file.resize(5'000'000'000));  // sparse: it claims what is not there
  file.close();
  QElapsedTimer timer;
  timer.start();
  dialog.openFile(name);
  settle(dialog);
  EXPECT_LT(timer.elapsed(), 2000);
  EXPECT_TRUE(dialog.message().contains("claims 5.0 GB")) << dialog.message().toStdString();
  EXPECT_FALSE(dialog.study().text);
}

TEST_F(LogDialogTest, AMissingFileAndAFolderAreRefused) {
  dialog.openFile(folder.filePath("none.csv"));
  settle(dialog);
  EXPECT_TRUE(dialog.message().contains("no such file")) << dialog.message().toStdString();
  dialog.openFile(folder.path());
  settle(dialog);
  EXPECT_TRUE(dialog.message().contains("no file")) << dialog.message().toStdString();
}

TEST_F(LogDialogTest, WithoutAPositionItAsksForOne) {
  open(dialog, "a,b\n0,5\n1,4\n2,9\n3,1\n4,7\n5,2\n");
  if (dialog.study().log) GTEST_SKIP() << "the columns were guessed";
  EXPECT_TRUE(dialog.message().contains("say which column")) << dialog.message().toStdString();
  EXPECT_EQ(find<QTableWidget>("log.columns")->columnCount(), 2);
}

class LogWindowTest : public WindowTest {
 protected:
  LogDialog* openLog(const std::string& text) {
    const QString file = folder.filePath("run.csv");
    putContent(file, QByteArray::fromStdString(text));
    QMimeData data;
    data.setUrls({QUrl::fromLocalFile(file)});
    QDragEnterEvent enter(QPoint(50, 50), Qt::CopyAction, &data, Qt::LeftButton, Qt::NoModifier);
    QApplication::sendEvent(window.get(), &enter);
    QDropEvent drop(QPointF(50, 50), Qt::CopyAction, &data, Qt::LeftButton, Qt::NoModifier);
    QApplication::sendEvent(window.get(), &drop);
    auto* dialog = window->findChild<LogDialog*>();
    if (dialog == nullptr) throw std::runtime_error("no dialog");
    QTest::qWait(120);
    EXPECT_TRUE(QTest::qWaitFor([&] { return !dialog->isBusy(); }, 30'000));
    return dialog;
  }
};

TEST_F(LogWindowTest, ADroppedLogBecomesTheCycleAndIsUndone) {
  openSampleCopy();
  const Project before = *document().project();
  LogDialog* dialog = openLog(InventedLog().text());
  ASSERT_TRUE(dialog->study().log) << dialog->message().toStdString();
  EXPECT_TRUE(*document().project() == before);
  dialog->findChild<QPushButton*>("log.useCycle")->click();
  ASSERT_TRUE(QTest::qWaitFor([&] { return document().project()->cycle.segments.size() == 1; }));
  settle();
  EXPECT_TRUE(document().snapshot().evaluation->cycle);
  trigger("action.undo");
  EXPECT_TRUE(*document().project() == before);
}

TEST_F(LogWindowTest, ABadLogLeavesTheProjectAlone) {
  openSampleCopy();
  const ProjectPtr before = document().project();
  LogDialog* dialog = openLog("t,q\n0,1\n1,abc\n2,3\n3,4\n4,5\n");
  EXPECT_TRUE(dialog->message().contains("line 3"));
  EXPECT_EQ(document().project(), before);
  EXPECT_FALSE(document().isModified());
  EXPECT_FALSE(document().history().canUndo());
}

TEST_F(LogWindowTest, MenuAndListOpenIt) {
  answers.file = folder.filePath("run.csv");
  putContent(answers.file, QByteArray::fromStdString(InventedLog().text()));
  trigger("action.openLog");
  auto* dialog = window->findChild<LogDialog*>();
  ASSERT_NE(dialog, nullptr);
  dialog->close();
  ASSERT_TRUE(QTest::qWaitFor([&] { return window->findChild<LogDialog*>() == nullptr; }));
  trigger("cycle.segments.other");
  EXPECT_NE(window->findChild<LogDialog*>(), nullptr);
}

}  // namespace
}  // namespace jw::test
