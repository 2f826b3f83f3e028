#include <cmath>

#include <gtest/gtest.h>

#include <QSignalSpy>
#include <QTest>

#include "core/checks/evaluation.h"
#include "core/model/field_catalogue.h"
#include "widgets/panels/built_ratios_dialog.h"

namespace jw {
namespace {

Stage planetaryStage(double ratio) {
  Stage stage;
  stage.family = StageFamily::Planetary;
  stage.ratio = ratio;
  stage.efficiency = 0.95;
  return stage;
}

TEST(BuiltRows, AreSortedByTheirError) {
  const auto rows = builtRows({StageFamily::Planetary, StageFamily::StrainWave}, 100, {});
  ASSERT_GT(rows.size(), 8U);
  for (std::size_t k = 1; k < rows.size(); ++k) {
    EXPECT_LE(std::abs(rows[k - 1].option.error), std::abs(rows[k].option.error) + 1e-9);
  }
}

// The ratio that the list states is the ratio that the stage then has.
TEST(BuiltRows, AdoptingOneGivesItsRatio) {
  Project project;
  project.active().transmission = {planetaryStage(30)};
  for (const StageFamily family :
       {StageFamily::Planetary, StageFamily::Cycloidal, StageFamily::StrainWave,
        StageFamily::Traction, StageFamily::ParallelShaft, StageFamily::Belt}) {
    const double wanted = family == StageFamily::ParallelShaft ? 4 : 30;
    for (const BuiltRow& row : builtRows({family}, wanted, {})) {
      Project changed = project;
      const auto done = buildStage(0, row).apply(changed);
      ASSERT_TRUE(done.has_value()) << describe(done.error());
      const Evaluation result = evaluate(changed);
      ASSERT_TRUE(result.stages.has_value()) << partsText(row.option).toStdString();
      EXPECT_NEAR(result.stages->front().stage.ratio, row.option.ratio, 1e-9 * row.option.ratio)
          << partsText(row.option).toStdString();
    }
  }
}

class BuiltRatiosDialogTest : public ::testing::Test {
 protected:
  QLineEdit& ratio() { return *dialog.findChild<QLineEdit*>("builtRatios.ratio"); }
  QTableWidget& table() { return *dialog.findChild<QTableWidget*>("builtRatios.table"); }
  QLabel& message() { return *dialog.findChild<QLabel*>("builtRatios.message"); }
  BuiltRatiosDialog dialog{planetaryStage(7), 0};
};

TEST_F(BuiltRatiosDialogTest, ListsAndAdoptsWithOneClick) {
  dialog.show();
  ASSERT_GT(table().rowCount(), 3);
  EXPECT_EQ(table().item(0, 3)->text(), "exact");
  QSignalSpy edits(&dialog, &BuiltRatiosDialog::editRequested);
  QTest::mouseClick(dialog.findChild<QPushButton*>("builtRatios.use"), Qt::LeftButton);
  ASSERT_EQ(edits.size(), 1);
  Project project;
  project.active().transmission = {planetaryStage(5)};
  ASSERT_TRUE(edits[0][0].value<Edit>().apply(project).has_value());
  EXPECT_FALSE(isSet(project.active().transmission[0].ratio));
  EXPECT_TRUE(isSet(project.active().transmission[0].planetary.first.sunTeeth));
}

TEST_F(BuiltRatiosDialogTest, SaysWhatCannotBeReadAndWhatCannotBeBuilt) {
  for (const char* text : {"seven", "-3", "5 kg", "nan"}) {
    ratio().setText(text);
    EXPECT_EQ(table().rowCount(), 0) << text;
    EXPECT_TRUE(message().text().startsWith("Wanted ratio: ")) << text;
  }
  ratio().setText("1e5");
  dialog.findChild<QLineEdit*>("builtRatios.diameter")->setText("20 mm");
  dialog.findChild<QLineEdit*>("builtRatios.module")->setText("5 mm");
  EXPECT_EQ(table().rowCount(), 0);
  EXPECT_FALSE(message().text().isEmpty());
}

}  // namespace
}  // namespace jw
