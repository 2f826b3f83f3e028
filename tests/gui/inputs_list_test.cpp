// Stages and moves as cards. Whole items move, with the text typed into them (Stage::asWritten).
#include <cmath>

#include <QMenu>
#include <QToolButton>

#include "tests/gui/inputs_support.h"
#include "widgets/inputs/fold_header.h"
#include "widgets/inputs/new_items.h"

namespace jw::test {
namespace {

void choose(Desk& desk, const char* button, const QString& entry) {
  auto& tool = desk.field<QToolButton>(button);
  for (QAction* action : tool.menu()->actions()) {
    if (QString(action->text()).remove('&') == entry) return action->trigger();
  }
  FAIL() << "no entry " << entry.toStdString();
}

void press(Desk& desk, const char* button) {
  QTest::keyClick(&desk.field<QToolButton>(button), Qt::Key_Space);
}

TEST(InputsList, TypedTextTravelsWithAMovedStage) {
  Desk desk;
  desk.type("transmission[0].ratio", "3:2");
  desk.type("transmission[0].peakTorque", "20 lbf*ft");
  press(desk, "transmission[0].moveDown");
  EXPECT_EQ(desk.project.active().transmission[1].family, StageFamily::Belt);
  EXPECT_EQ(desk.text("transmission[1].peakTorque"), "20 lbf*ft");
  EXPECT_EQ(desk.text("transmission[1].ratio"), "3:2");
  EXPECT_EQ(desk.text("transmission[0].peakTorque"), "");
  EXPECT_EQ(desk.field("transmission[1].peakTorque").text(), "20");
  EXPECT_EQ(desk.edits.back().description, "Move stage 1");
  desk.undo();
  EXPECT_EQ(desk.text("transmission[0].peakTorque"), "20 lbf*ft");
}

TEST(InputsList, UnfoldedStateAndFocusMoveAlong) {
  Desk desk;
  desk.panel.reveal("transmission[0].ratio");
  press(desk, "transmission[0].moveDown");
  EXPECT_FALSE(desk.field<FoldHeader>("transmission[0].header").isChecked());
  EXPECT_TRUE(desk.field<FoldHeader>("transmission[1].header").isChecked());
  EXPECT_EQ(desk.panel.focusWidget()->objectName(), "transmission[1].header");  // cannot go on
}

TEST(InputsList, AltArrowsMoveAndDeleteRemoves) {
  Desk desk;
  desk.panel.reveal("transmission[0]");
  QTest::keyClick(desk.panel.focusWidget(), Qt::Key_Down, Qt::AltModifier);
  EXPECT_EQ(desk.project.active().transmission[1].family, StageFamily::Belt);
  QTest::keyClick(desk.panel.focusWidget(), Qt::Key_Up, Qt::AltModifier);
  EXPECT_EQ(desk.project.active().transmission[0].family, StageFamily::Belt);
  QTest::keyClick(desk.panel.focusWidget(), Qt::Key_Delete);
  ASSERT_EQ(desk.project.active().transmission.size(), 1U);
  EXPECT_EQ(desk.project.active().transmission[0].family, StageFamily::StrainWave);
  EXPECT_EQ(desk.panel.focusWidget()->objectName(), "transmission[0].header");
}

TEST(InputsList, RemovingAllSaysDirectDrive) {
  Desk desk;
  desk.panel.reveal("transmission");
  choose(desk, "transmission[0].more", "Remove");
  choose(desk, "transmission[0].more", "Remove");
  EXPECT_TRUE(desk.project.active().transmission.empty());
  bool said = false;
  for (const QLabel* label : desk.panel.findChildren<QLabel*>()) {
    said = said || (label->isVisible() && label->text() == "Direct drive: no stage");
  }
  EXPECT_TRUE(said);
  EXPECT_EQ(desk.steps.size(), 2U);
  desk.undo();
  desk.undo();
  EXPECT_EQ(desk.project.active().transmission.size(), 2U);
  EXPECT_NO_THROW(desk.field("transmission[1].ratio"));
}

TEST(InputsList, AddedStageIsLastUnfoldedAndAsksForItsNumbers) {
  Desk desk;
  choose(desk, "transmission.add", "Cycloidal");
  ASSERT_EQ(desk.project.active().transmission.size(), 3U);
  const Stage& added = desk.project.active().transmission.back();
  EXPECT_EQ(added.family, StageFamily::Cycloidal);
  EXPECT_FALSE(isSet(added.ratio));
  EXPECT_FALSE(isSet(added.efficiency));
  EXPECT_TRUE(desk.field<FoldHeader>("transmission[2].header").isChecked());
  EXPECT_EQ(desk.edits.back().description, "Add cycloidal stage");
}

TEST(InputsList, LifeExponentOfANewStageFollowsItsBearings) {
  // ISO 281: p = 3 for ball, 10/3 for roller bearings (read second-hand).
  EXPECT_DOUBLE_EQ(newStage(StageFamily::Planetary).lifeExponent, 10.0 / 3);
  EXPECT_DOUBLE_EQ(newStage(StageFamily::StrainWave).lifeExponent, 3);
}

TEST(InputsList, DuplicateCopiesEverythingBehindTheOriginal) {
  Desk desk;
  desk.type("transmission[0].ratio", "3:2");
  choose(desk, "transmission[0].more", "Duplicate");
  ASSERT_EQ(desk.project.active().transmission.size(), 3U);
  EXPECT_TRUE(desk.project.active().transmission[1] == desk.project.active().transmission[0]);
  EXPECT_EQ(desk.text("transmission[1].ratio"), "3:2");
}

TEST(InputsList, HeadingSaysTheMainThings) {
  Desk desk;
  desk.type("transmission[1].ratio", "100");
  EXPECT_EQ(desk.field<FoldHeader>("transmission[1].header").text(), "Strain wave");
  EXPECT_EQ(desk.field<FoldHeader>("transmission[1].header").remark(), "stage 2 · 100 : 1");
  EXPECT_EQ(desk.field<FoldHeader>("transmission[0].header").remark(), "stage 1 · ratio needed");
  desk.type<QLineEdit>("cycle.segments[0].name", "out & back");
  desk.type("cycle.segments[0].travel", "120");
  desk.type("cycle.segments[0].duration", "800 ms");
  const auto& header = desk.field<FoldHeader>("cycle.segments[0].header");
  EXPECT_EQ(header.text(), "out & back");
  EXPECT_EQ(header.remark(), QString::fromUtf8("120° · 800\u00A0ms · trapezoidal speed"));
}

TEST(InputsList, TableMovesOfferTheirTable) {
  Desk desk;
  QSignalSpy spy(&desk.panel, &InputsPanel::tableRequested);
  desk.panel.reveal("cycle.segments[2]");
  EXPECT_FALSE(desk.field<QWidget>("cycle.segments[0].open").isVisibleTo(&desk.panel));
  QTest::mouseClick(&desk.field<QWidget>("cycle.segments[2].open"), Qt::LeftButton);
  ASSERT_EQ(spy.size(), 1);
  EXPECT_EQ(spy[0][0].toInt(), 2);
}

TEST(InputsList, MassesAreAddedTypedAndRemoved) {
  Desk desk;
  desk.panel.reveal("load");
  press(desk, "load.masses.add");
  ASSERT_EQ(desk.project.load.masses.size(), 1U);
  EXPECT_EQ(desk.edits.back().description, "Add mass");
  EXPECT_EQ(desk.field<FoldHeader>("load.masses[0].header").remark(), "mass needed");
  desk.type("load.masses[0].mass", "5 lb");
  desk.type("load.masses[0].x", "300 mm");
  EXPECT_EQ(desk.text("load.masses[0].mass"), "5 lb");
  EXPECT_DOUBLE_EQ(desk.project.load.masses[0].x, 0.3);
  EXPECT_EQ(desk.field<FoldHeader>("load.masses[0].header").remark(),
            QString::fromUtf8("2.268 kg at x 0.3 m, y 0 m"));
  choose(desk, "load.masses[0].more", "Remove");
  EXPECT_TRUE(desk.project.load.masses.empty());
}

TEST(InputsList, EveryMotionLawCanBeAdded) {
  Desk desk;
  const auto choices = structInfo<Segment>().find("law")->choices;
  auto entries = desk.field<QToolButton>("cycle.segments.add").menu()->actions();
  EXPECT_EQ(entries.takeLast()->objectName(), "cycle.segments.other");  // measured logs
  EXPECT_TRUE(entries.takeLast()->isSeparator());
  ASSERT_EQ(static_cast<std::size_t>(entries.size()), choices.size());
  for (QAction* entry : entries) entry->trigger();
  ASSERT_EQ(desk.project.cycle.segments.size(), 3 + choices.size());
  for (std::size_t k = 0; k < choices.size(); ++k) {
    EXPECT_EQ(static_cast<std::size_t>(desk.project.cycle.segments[3 + k].law), k);
    EXPECT_FALSE(isSet(desk.project.cycle.segments[3 + k].duration));
  }
}

TEST(InputsList, WrongEntriesDoNotJumpToAnotherStage) {
  Desk desk;
  desk.type("transmission[0].ratio", "abc");
  press(desk, "transmission[0].moveDown");
  EXPECT_FALSE(desk.panel.hasWrongEntry());
  EXPECT_EQ(desk.field("transmission[1].ratio").text(), "");
}

TEST(InputsList, StaleEditIsRefusedAndChangesNothing) {
  const Edit edit = stagePlan().remove(7);
  Project project = orchardArm();
  const Project before = project;
  const auto result = edit.apply(project);
  ASSERT_FALSE(result);
  EXPECT_EQ(result.error().what, "there is no stage 8");
  EXPECT_TRUE(project == before);
}

}  // namespace
}  // namespace jw::test
