// Opening, saving, closing, and what happens when something is wrong with a file.
#include <cmath>

#include <QDropEvent>
#include <QMimeData>
#include <QStatusBar>

#include "app/autosave.h"
#include "core/files/project_text.h"
#include "tests/gui/support.h"

namespace jw::test {
namespace {

using WindowFile = WindowTest;

TEST_F(WindowFile, OpensWithoutAFileAndIsNotModified) {
  EXPECT_FALSE(document().isModified());
  EXPECT_TRUE(window->windowTitle().startsWith("Untitled"));
}

TEST_F(WindowFile, SaveAndReopenIsTheSame) {
  const QString file = openSampleCopy();
  enter("load.payloadMass", "20 lb");
  const Project edited = *document().project();
  trigger("action.save");
  EXPECT_FALSE(document().isModified());
  EXPECT_TRUE(contentOf(file).contains("\"payloadMass\": \"20 lb\""));
  MainWindow second(answers);
  ASSERT_TRUE(second.session().open(file));
  EXPECT_TRUE(*second.document().project() == edited);
}

TEST_F(WindowFile, SavingWithoutEditsLeavesTheBytesOfTheFile) {
  const QString file = openSampleCopy();
  const QByteArray before = contentOf(file);
  trigger("action.save");
  EXPECT_EQ(contentOf(file), before);
}

TEST_F(WindowFile, UndoToTheSavedStateIsNotModified) {
  openSampleCopy();
  enter("load.payloadMass", "5 kg");
  trigger("action.save");
  trigger("action.undo");
  EXPECT_TRUE(document().isModified());
  trigger("action.redo");
  EXPECT_FALSE(document().isModified());
}

TEST_F(WindowFile, UnsavedChangesAreAskedForAndCancelKeepsThem) {
  openSampleCopy();
  enter("load.payloadMass", "5 kg");
  answers.unsaved = Prompts::Unsaved::Cancel;
  trigger("action.new");
  EXPECT_EQ(answers.unsavedAsked, 1);
  EXPECT_DOUBLE_EQ(number("load.payloadMass"), 5);
  EXPECT_FALSE(window->close());
  EXPECT_EQ(answers.unsavedAsked, 2);
}

TEST_F(WindowFile, DiscardingLeavesTheFileAndNoCopyBehind) {
  const QString file = openSampleCopy();
  const QByteArray before = contentOf(file);
  enter("load.payloadMass", "5 kg");
  window->session().autosave().writeNow();
  ASSERT_TRUE(QFile::exists(Autosave::fileBeside(file)));
  answers.unsaved = Prompts::Unsaved::Discard;
  EXPECT_TRUE(window->close());
  EXPECT_EQ(contentOf(file), before);
  EXPECT_FALSE(QFile::exists(Autosave::fileBeside(file)));
}

TEST_F(WindowFile, ClosingWithSaveSaves) {
  const QString file = openSampleCopy();
  enter("load.payloadMass", "5 kg");
  answers.unsaved = Prompts::Unsaved::Save;
  EXPECT_TRUE(window->close());
  EXPECT_TRUE(contentOf(file).contains("\"payloadMass\": \"5 kg\""));
}

TEST_F(WindowFile, FailedSaveKeepsTheWindowOpen) {
  openSampleCopy();
  enter("load.payloadMass", "5 kg");
  answers.file = folder.filePath("missing/arm.jointwright");
  trigger("action.saveAs");
  EXPECT_TRUE(document().isModified());
  EXPECT_TRUE(window->messages().text().contains("no such folder"));
}

TEST_F(WindowFile, BadFileLeavesTheProjectAndNamesThePlace) {
  const QString open = openSampleCopy();
  enter("load.payloadMass", "5 kg");
  const auto before = document().project();
  const QString bad = folder.filePath("bad.jointwright");
  putContent(bad, contentOf(open).replace("\"deg\"", "\"deg").replace("1.2 N*m", "1.2 N*"));
  EXPECT_FALSE(window->session().open(bad));
  EXPECT_EQ(document().project(), before);
  EXPECT_EQ(answers.unsavedAsked, 0);
  const QString message = window->messages().text();
  EXPECT_TRUE(message.contains("bad.jointwright")) << message.toStdString();
  EXPECT_TRUE(message.contains("load.coulombFriction")) << message.toStdString();
  EXPECT_TRUE(window->messages().isVisible());
}

TEST_F(WindowFile, MissingFileIsSaid) {
  EXPECT_FALSE(window->session().open(folder.filePath("none.jointwright")));
  EXPECT_TRUE(window->messages().text().contains("no such file"));
}

TEST_F(WindowFile, UnknownKeysAreReportedAndSavedAgain) {
  const QString file = copyOfSample();
  putContent(file, contentOf(file).replace("\"load\": {", "\"load\": {\n    \"colour\": \"red\","));
  ASSERT_TRUE(window->session().open(file));
  EXPECT_TRUE(window->messages().text().contains("load.colour"));
  trigger("action.save");
  EXPECT_TRUE(contentOf(file).contains("\"colour\": \"red\""));
}

TEST_F(WindowFile, DroppedFileOpens) {
  const QString file = copyOfSample();
  QMimeData data;
  data.setUrls({QUrl::fromLocalFile(file)});
  QDragEnterEvent enter(QPoint(50, 50), Qt::CopyAction, &data, Qt::LeftButton, Qt::NoModifier);
  QApplication::sendEvent(window.get(), &enter);
  EXPECT_TRUE(enter.isAccepted());
  QDropEvent drop(QPointF(50, 50), Qt::CopyAction, &data, Qt::LeftButton, Qt::NoModifier);
  QApplication::sendEvent(window.get(), &drop);
  EXPECT_EQ(document().fileName(), QFileInfo(file).absoluteFilePath());
}

TEST_F(WindowFile, SampleOpensAsACopyWithoutAName) {
  ASSERT_TRUE(window->session().openSample(samples().value(0)));
  EXPECT_TRUE(document().fileName().isEmpty());
  EXPECT_FALSE(document().isModified());
}

TEST_F(WindowFile, WorstVerdictOfTheNewProjectIsChosen) {
  for (const QString& file : samples()) {
    ASSERT_TRUE(window->session().openSample(file));
    settle();
    const auto* list = window->findChild<VerdictList*>();
    EXPECT_EQ(list->findChild<QListView*>()->currentIndex().row(), 0) << file.toStdString();
  }
}

TEST_F(WindowFile, ALongTableIsKeptAsideBesideTheWindow) {
  const QString file = openSampleCopy();
  Segment measured;
  measured.law = MotionLaw::Table;
  for (int i = 0; i < 60'000; ++i) {
    measured.table.time.push_back(1e-3 * i);
    measured.table.angle.push_back(0.3 * std::sin(1e-3 * i));
  }
  window->applyEdit({"Use a log", {}, [&](Project& project) -> tl::expected<void, InputError> {
                       project.cycle.segments = {measured};
                       return {};
                     }});
  window->session().autosave().writeNow();
  const QString copy = Autosave::fileBeside(file);
  ASSERT_TRUE(QTest::qWaitFor([&] { return QFile::exists(copy); }, 10'000));
  const auto kept = loadProjectFile(copy);
  ASSERT_TRUE(kept);
  EXPECT_TRUE(kept->project == *document().project());
  trigger("action.save");
  EXPECT_FALSE(QFile::exists(copy));
}

TEST_F(WindowFile, AutosaveGoesBesideTheFileNeverOverIt) {
  const QString file = openSampleCopy();
  const QByteArray before = contentOf(file);
  window->session().autosave().setDelay(10);
  enter("load.payloadMass", "5 kg");
  const QString copy = Autosave::fileBeside(file);
  ASSERT_TRUE(QTest::qWaitFor([&] { return QFile::exists(copy); }, 6000));
  EXPECT_EQ(contentOf(file), before);
  EXPECT_TRUE(QFileInfo(copy).fileName().startsWith("."));
  trigger("action.save");
  EXPECT_FALSE(QFile::exists(copy));
}

TEST_F(WindowFile, WorkOfABrokenRunIsOfferedAndTakenUp) {
  const QString file = openSampleCopy();
  Project edited = *document().project();
  ASSERT_TRUE(setField(edited, "load.payloadMass", "5 kg"));
  putContent(Autosave::fileBeside(file), QByteArray::fromStdString(writeProject(edited)));
  answers.recover = true;
  ASSERT_TRUE(window->session().open(file));
  EXPECT_EQ(answers.recoverAsked, 1);
  EXPECT_DOUBLE_EQ(number("load.payloadMass"), 5);
  EXPECT_TRUE(document().isModified());
  EXPECT_TRUE(QFile::exists(Autosave::fileBeside(file)));
  trigger("action.save");
  EXPECT_FALSE(QFile::exists(Autosave::fileBeside(file)));
}

TEST_F(WindowFile, WorkThatIsNotWantedIsThrownAway) {
  const QString file = openSampleCopy();
  Project edited = *document().project();
  ASSERT_TRUE(setField(edited, "load.payloadMass", "5 kg"));
  putContent(Autosave::fileBeside(file), QByteArray::fromStdString(writeProject(edited)));
  ASSERT_TRUE(window->session().open(file));
  EXPECT_EQ(answers.recoverAsked, 1);
  EXPECT_DOUBLE_EQ(number("load.payloadMass"), 3.4);
  EXPECT_FALSE(QFile::exists(Autosave::fileBeside(file)));
}

TEST_F(WindowFile, FileChangedByAnotherProgramIsNotSavedOverUnasked) {
  const QString file = openSampleCopy();
  enter("load.payloadMass", "5 kg");
  const QByteArray foreign = contentOf(file) + "\n";
  putContent(file, foreign);
  trigger("action.save");
  EXPECT_EQ(answers.overwriteAsked, 1);
  EXPECT_EQ(contentOf(file), foreign);
  answers.overwrite = true;
  trigger("action.save");
  EXPECT_FALSE(document().isModified());
}

TEST_F(WindowFile, FigureAndReviewAreExported) {
  openSampleCopy();
  answers.file = folder.filePath("envelope.svg");
  trigger("action.exportFigure");
  EXPECT_TRUE(contentOf(answers.file).contains("<svg"));
  answers.file = folder.path();
  trigger("action.exportReview");
  EXPECT_TRUE(contentOf(folder.filePath("review.pdf")).startsWith("%PDF"));
  EXPECT_TRUE(contentOf(folder.filePath("cycle.png")).startsWith("\x89PNG"));
  EXPECT_TRUE(contentOf(folder.filePath("verdicts.txt")).contains("Replaces no risk assessment"));
}

TEST_F(WindowFile, LayoutIsRememberedAndRubbishFallsBack) {
  auto* columns = window->findChild<QSplitter*>("columns");
  columns->setSizes({350, 700, 390});
  emit columns->splitterMoved(350, 1);
  const auto wanted = columns->sizes();
  const QByteArray state = window->layoutState();
  MainWindow second(answers);
  second.show();
  EXPECT_TRUE(second.restoreLayoutState(state));
  EXPECT_EQ(second.findChild<QSplitter*>("columns")->sizes(), wanted);
  EXPECT_FALSE(second.restoreLayoutState("rubbish"));
  EXPECT_GT(second.findChild<QSplitter*>("columns")->sizes().value(1), 300);
}

}  // namespace
}  // namespace jw::test
