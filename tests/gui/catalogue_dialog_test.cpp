// The catalogue's table. Expectations are its own contract; sizes of files are the project's rule.
#include "widgets/panels/catalogue_dialog.h"

#include <gtest/gtest.h>

#include <QElapsedTimer>
#include <QFile>
#include <QSignalSpy>
#include <QTemporaryDir>
#include <QtTest>

#include "widgets/panels/catalogue_choice.h"

namespace jw {
namespace {

QString put(const QTemporaryDir& folder, const char* name, const QByteArray& text) {
  QFile file(folder.filePath(name));
  EXPECT_TRUE(file.open(QIODevice::WriteOnly) && file.write(text) == text.size());
  return file.fileName();
}

class CatalogueDialogTest : public ::testing::Test {
 protected:
  QAbstractButton& button(const char* name) {
    return *dialog.findChild<QAbstractButton*>(QString("catalogue.") + name);
  }
  QString message() { return dialog.findChild<QLabel*>("catalogue.message")->text(); }
  CatalogueTableModel& model() { return dialog.model(); }
  bool enter(int row, int column, const QString& text) {
    return model().setData(model().index(row, column), text, Qt::EditRole);
  }
  QString cell(int row, int column, int role = Qt::DisplayRole) {
    return model().data(model().index(row, column), role).toString();
  }
  QTemporaryDir folder;
  CatalogueDialog dialog{bundledCatalogue(CatalogueKind::Motors)};
};

TEST_F(CatalogueDialogTest, TheBundledOneIsReadOnlyUntilCopied) {
  dialog.show();
  EXPECT_EQ(model().rowCount(), 272);
  EXPECT_FALSE(enter(0, 0, "mine"));
  EXPECT_FALSE(button("use").isEnabled());
  EXPECT_FALSE(button("add").isEnabled());
  EXPECT_TRUE(message().contains("invented"));
  QTest::mouseClick(&button("copy"), Qt::LeftButton);
  EXPECT_TRUE(enter(0, 0, "mine"));
  EXPECT_TRUE(button("use").isEnabled());
  EXPECT_NE(bundledCatalogue(CatalogueKind::Motors)->motors[0].name, "mine");
}

TEST_F(CatalogueDialogTest, HeadersNameTheUnits) {
  QStringList titles;
  for (int k = 0; k < model().columnCount(); ++k)
    titles << model().headerData(k, Qt::Horizontal, Qt::DisplayRole).toString();
  EXPECT_TRUE(titles.contains("Rotor inertia, kg·cm²")) << titles.join("|").toStdString();
}

TEST_F(CatalogueDialogTest, MarksAWrongCellInPlaceAndTakesNothingOver) {
  dialog.copyToEdit();
  QSignalSpy taken(&dialog, &CatalogueDialog::catalogueTaken);
  const int inertia = 3;
  ASSERT_TRUE(enter(4, inertia, "5 J"));
  EXPECT_TRUE(cell(4, inertia, Qt::ToolTipRole).contains("inertia"));
  EXPECT_TRUE(message().contains("row 5")) << message().toStdString();
  EXPECT_FALSE(button("use").isEnabled());
  ASSERT_TRUE(enter(4, inertia, "2 oz*in^2"));
  EXPECT_EQ(cell(4, inertia), "2 oz*in^2");
  EXPECT_TRUE(cell(4, inertia, Qt::ToolTipRole).isEmpty());
  dialog.use();
  ASSERT_EQ(taken.size(), 1);
  const auto catalogue = taken[0][0].value<CataloguePtr>();
  EXPECT_FALSE(catalogue->bundled);
  EXPECT_NEAR(catalogue->motors[4].motor.rotorInertia, 2 * 0.028349523125 * 0.0254 * 0.0254, 1e-12);
}

TEST_F(CatalogueDialogTest, EveryChangeIsOneStepBack) {
  dialog.copyToEdit();
  const QString before = cell(0, 0);
  auto& table = *dialog.findChild<QTableView*>("catalogue.table");
  enter(0, 0, "mine");
  table.selectRow(0);
  QTest::mouseClick(&button("duplicate"), Qt::LeftButton);
  EXPECT_EQ(cell(1, 0), "mine");
  QTest::mouseClick(&button("add"), Qt::LeftButton);
  EXPECT_EQ(model().rowCount(), 274);
  EXPECT_FALSE(button("use").isEnabled());  // the new row has no name yet
  table.selectRow(0);
  QTest::mouseClick(&button("remove"), Qt::LeftButton);
  EXPECT_EQ(model().rowCount(), 273);
  for (int k = 0; k < 4; ++k) QTest::mouseClick(&button("undo"), Qt::LeftButton);
  EXPECT_EQ(model().rowCount(), 272);
  EXPECT_EQ(cell(0, 0), before);
  EXPECT_FALSE(model().isModified());
  EXPECT_FALSE(button("undo").isEnabled());
  for (int k = 0; k < 4; ++k) QTest::mouseClick(&button("redo"), Qt::LeftButton);
  EXPECT_EQ(model().rowCount(), 273);
}

TEST_F(CatalogueDialogTest, AnImportNamesLineAndColumnAndLoadsNothingByHalf) {
  dialog.copyToEdit();
  const auto done =
      dialog.importFile(put(folder, "bad.csv", "name,mass [kg]\ngood,1\nbad,heavy\n"));
  ASSERT_FALSE(done);
  EXPECT_NE(done.error().where.find("bad.csv, line 3"), std::string::npos) << done.error().where;
  EXPECT_NE(done.error().where.find("mass"), std::string::npos);
  EXPECT_EQ(model().rowCount(), 272);
  EXPECT_FALSE(model().canUndo());
  ASSERT_TRUE(dialog.importFile(put(folder, "good.csv", "name;mass [lb]\none;2,5\n")));
  EXPECT_EQ(model().rowCount(), 1);
  model().undo();
  EXPECT_EQ(model().rowCount(), 272);
}

TEST_F(CatalogueDialogTest, SavesWhatItReadsAgain) {
  dialog.copyToEdit();
  enter(0, 0, "mine");
  const QString file = folder.filePath("saved.csv");
  ASSERT_TRUE(dialog.saveFile(file));
  EXPECT_FALSE(model().isModified());
  const auto read = openCatalogue(CatalogueKind::Motors, file);
  ASSERT_TRUE(read) << describe(read.error());
  EXPECT_EQ((*read)->motors.size(), 272U);
  EXPECT_EQ((*read)->motors[0].name, "mine");
  EXPECT_FALSE(dialog.saveFile(folder.filePath("none/saved.csv")));
}

TEST_F(CatalogueDialogTest, TenThousandRowsStayQuick) {
  QByteArray text =
      "name,torqueConstant [N*m/A],rotorInertia [kg*cm^2],resistance [ohm],mass [kg]\n";
  for (int k = 0; k < 10'000; ++k)
    text += "m" + QByteArray::number(k) + ",0.1,0.5," + QByteArray::number(1 + k % 7) + ",1.5\n";
  const QString file = put(folder, "big.csv", text);
  dialog.show();
  QElapsedTimer clock;
  clock.start();
  ASSERT_TRUE(dialog.importFile(file));
  dialog.grab();
  RecordProperty("importMs", std::to_string(clock.restart()));
  for (int k = 0; k < 100; ++k) enter(50 * k, 2, QString::number(k + 1));
  const qint64 edits = clock.elapsed();
  RecordProperty("hundredEditsMs", std::to_string(edits));
  EXPECT_LT(edits, 100 * 33);  // a frame each
  EXPECT_EQ(model().rowCount(), 10'000);
}

TEST(CatalogueChoiceTest, TellsInventedFromOwnAndKeepsTheOldOnAnError) {
  QTemporaryDir folder;
  CatalogueChoice choice(CatalogueKind::Reducers, "test.choice");
  auto& list = *choice.findChild<QComboBox*>("test.choice");
  EXPECT_TRUE(list.currentText().contains("invented"));
  QSignalSpy changed(&choice, &CatalogueChoice::catalogueChanged);
  EXPECT_FALSE(choice.open(put(folder, "bad.csv", "name,ratio\na,5\n")));
  EXPECT_FALSE(choice.open(folder.filePath("missing.csv")));
  EXPECT_EQ(changed.size(), 0);
  EXPECT_TRUE(choice.catalogue()->bundled);
  ASSERT_TRUE(choice.open(put(folder, "own.csv", "name,family,ratio\na,planetary,5\n")));
  EXPECT_EQ(changed.size(), 1);
  EXPECT_EQ(choice.catalogue()->reducers.size(), 1U);
  EXPECT_TRUE(list.currentText().contains("own.csv"));
}

TEST(CatalogueChoiceTest, OffersFilesOfEarlierRunsAndReadsThemOnlyWhenChosen) {
  QTemporaryDir folder;
  const QString file = put(folder, "kept.csv", "name,family,ratio\na,planetary,5\n");
  const QString spoilt = put(folder, "spoilt.csv", "name,family,ratio\na,planetary,5\n");
  {
    CatalogueChoice before(CatalogueKind::Reducers, "test.before");
    ASSERT_TRUE(before.open(spoilt));
    ASSERT_TRUE(before.open(file));
  }
  put(folder, "spoilt.csv", "nothing\n");
  CatalogueChoice choice(CatalogueKind::Reducers, "test.choice");
  auto& list = *choice.findChild<QComboBox*>("test.choice");
  EXPECT_TRUE(choice.catalogue()->bundled);
  QSignalSpy refused(&choice, &CatalogueChoice::refused);
  const auto pick = [&](const QString& name) {
    emit list.activated(list.findText(name, Qt::MatchStartsWith));
  };
  pick("spoilt.csv");
  ASSERT_EQ(refused.size(), 1);
  EXPECT_FALSE(refused.takeFirst().front().toString().isEmpty());
  EXPECT_TRUE(choice.catalogue()->bundled);
  EXPECT_EQ(list.findText("spoilt.csv", Qt::MatchStartsWith), -1);
  pick("kept.csv");
  EXPECT_EQ(choice.catalogue()->reducers.size(), 1U);
  EXPECT_EQ(list.currentText(), "kept.csv: 1 reducer");
  QFile::remove(file);
  EXPECT_EQ(CatalogueChoice(CatalogueKind::Reducers, "test.after")
                .findChild<QComboBox*>("test.after")
                ->findText("kept.csv", Qt::MatchStartsWith),
            -1);
}

}  // namespace
}  // namespace jw
