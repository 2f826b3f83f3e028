// What is typed into a number field. Conversion factors: NIST SP 811 (2008), appendix B. How an
// entry behaves is the contract of widgets/inputs/number_field.h and widgets/edit.h.
#include <cmath>

#include "tests/gui/inputs_support.h"

namespace jw::test {
namespace {

constexpr auto kTorque = "transmission[1].ratedTorque";

TEST(InputsNumber, BareNumberIsInTheFieldsUnit) {
  Desk desk;
  desk.type("motor.rotorInertia", "0.42");
  EXPECT_NEAR(desk.number("motor.rotorInertia"), 0.42e-4, 1e-18);  // 1 cm² = 1e-4 m²
  EXPECT_EQ(desk.text("motor.rotorInertia"), "0.42");
}

TEST(InputsNumber, TypedUnitIsUnderstoodAndKept) {
  Desk desk;
  auto& field = desk.type(kTorque, "20 lbf*ft");
  EXPECT_NEAR(desk.number(kTorque), 27.11636, 5e-6);  // 1 lbf·ft = 1.355818 N·m
  EXPECT_EQ(desk.text(kTorque), "20 lbf*ft");
  EXPECT_EQ(field.shownUnit(), "");  // the text says it
  desk.enter("load.inertia");
  EXPECT_EQ(field.text(), "20");
  EXPECT_EQ(field.shownUnit(), "lbf·ft");
}

TEST(InputsNumber, FractionsOfAnInch) {
  Desk desk;
  desk.type("load.payloadDistance", "3/8 in");
  EXPECT_NEAR(desk.number("load.payloadDistance"), 0.375 * 0.0254,
              1e-15);  // 1 in = 25.4 mm exactly
}

TEST(InputsNumber, EveryReadableStateIsSentAndOneStayIsOneStep) {
  Desk desk;
  desk.type("supply.voltage", "48.5");
  EXPECT_EQ(desk.edits.size(), 4U);  // "4", "48", "48.", "48.5"
  EXPECT_EQ(desk.steps.size(), 1U);
  EXPECT_DOUBLE_EQ(desk.number("supply.voltage"), 48.5);
  EXPECT_EQ(desk.edits.front().description, "Change bus voltage");
  desk.undo();
  EXPECT_TRUE(std::isnan(desk.number("supply.voltage")));
  EXPECT_EQ(desk.field("supply.voltage").text(), "");
}

TEST(InputsNumber, TwoStaysAreTwoSteps) {
  Desk desk;
  desk.type("supply.voltage", "48");
  desk.enter("load.inertia");
  desk.type("supply.voltage", "24");
  EXPECT_EQ(desk.steps.size(), 2U);
  QTest::keyClick(&desk.field("supply.voltage"), Qt::Key_Return);
  desk.type("supply.voltage", "36");
  EXPECT_EQ(desk.steps.size(), 3U);
}

TEST(InputsNumber, WrongEntryIsMarkedAndTheModelKeepsTheLastGoodValue) {
  Desk desk;
  desk.type("transmission[1].ratedLife", "7000");
  auto& field = desk.type("transmission[1].ratedLife", "7 0O0 h");
  EXPECT_EQ(field.property("state"), "wrong");
  EXPECT_TRUE(desk.panel.hasWrongEntry());
  EXPECT_EQ(messageBelow(field), "");  // not while typing goes on
  QTRY_VERIFY_WITH_TIMEOUT(!messageBelow(field).isEmpty(), 2000);
  EXPECT_TRUE(field.accessibleDescription().startsWith(messageBelow(field)));
  EXPECT_DOUBLE_EQ(desk.number("transmission[1].ratedLife"), 7 * 3600.0);
  QTest::keyClick(&field, Qt::Key_Tab);
  EXPECT_EQ(field.text(), "7 0O0 h");  // nothing that was typed is lost
  EXPECT_TRUE(desk.panel.hasWrongEntry());
}

TEST(InputsNumber, WrongKindOfUnitSaysWhatWouldBeRight) {
  Desk desk;
  auto& field = desk.type(kTorque, "12 J");
  QTest::keyClick(&field, Qt::Key_Return);
  EXPECT_TRUE(messageBelow(field).contains("torque")) << messageBelow(field).toStdString();
  EXPECT_TRUE(messageBelow(field).contains("N·m")) << messageBelow(field).toStdString();
  EXPECT_DOUBLE_EQ(desk.number(kTorque), 12);  // what could be read on the way stays
}

TEST(InputsNumber, OutOfRangeIsRefusedWithTheRange) {
  Desk desk;
  desk.type("transmission[1].efficiency", "0.7");
  auto& field = desk.type("transmission[1].efficiency", "1.7");
  QTest::keyClick(&field, Qt::Key_Return);
  EXPECT_TRUE(messageBelow(field).contains("up to 1")) << messageBelow(field).toStdString();
  EXPECT_DOUBLE_EQ(desk.number("transmission[1].efficiency"), 1.0);  // "1" and "1." were readable
}

TEST(InputsNumber, WrongEntrySignalTellsBothWays) {
  Desk desk;
  QSignalSpy spy(&desk.panel, &InputsPanel::wrongEntryChanged);
  desk.type("supply.voltage", "x");
  desk.type("motor.resistance", "y");
  desk.type("motor.resistance", "1");
  ASSERT_EQ(spy.size(), 1);
  desk.type("supply.voltage", "4");
  ASSERT_EQ(spy.size(), 2);
  EXPECT_TRUE(spy[0][0].toBool());
  EXPECT_FALSE(spy[1][0].toBool());
}

TEST(InputsNumber, EscapeGoesBackToTheStart) {
  Desk desk;
  desk.type(kTorque, "20 lbf*ft");
  desk.enter("load.inertia");
  const Project before = desk.project;
  auto& field = desk.type(kTorque, "35");
  QTest::keyClick(&field, Qt::Key_Escape);
  EXPECT_EQ(field.text(), "20 lbf*ft");
  EXPECT_TRUE(desk.project == before);
  EXPECT_EQ(desk.steps.size(), 2U);  // the stay and its return are one step
  QTest::keyClicks(&field, "x");
  QTest::keyClick(&field, Qt::Key_Escape);
  EXPECT_FALSE(desk.panel.hasWrongEntry());
  EXPECT_TRUE(desk.project == before);
}

TEST(InputsNumber, EscapeLeavesNoTextBehindWhereNoneWasTyped) {
  Desk desk;
  const Project before = desk.project;
  auto& field = desk.type("load.gravity", "1.62");
  QTest::keyClick(&field, Qt::Key_Escape);
  EXPECT_TRUE(desk.project == before);
}

TEST(InputsNumber, ClearingLeavesTheFieldWithoutAValue) {
  Desk desk;
  auto& field = desk.type(kTorque, "54");
  field.clearValue();
  EXPECT_TRUE(std::isnan(desk.number(kTorque)));
  EXPECT_EQ(field.placeholderText(), "not given");
  EXPECT_EQ(desk.steps.size(), 2U);
}

TEST(InputsNumber, ClearingANumberWithADefaultGivesTheDefault) {
  Desk desk;
  const Project before = desk.project;
  auto& field = desk.type("load.gravity", "1.62");
  field.clearValue();
  EXPECT_DOUBLE_EQ(desk.number("load.gravity"), 9.80665);  // ISO 80000-3
  EXPECT_TRUE(desk.project == before);
  EXPECT_EQ(field.text(), "9.80665");
}

TEST(InputsNumber, OtherUnitKeepsTheValue) {
  Desk desk;
  auto& field = desk.type(kTorque, "20 lbf*ft");
  const double before = desk.number(kTorque);
  field.showInUnit("N*m");
  EXPECT_NEAR(desk.number(kTorque), before, 1e-12 * before);
  EXPECT_TRUE(field.text().startsWith("27.116")) << field.text().toStdString();
  field.showInUnit("kN*m");
  EXPECT_NEAR(desk.number(kTorque), before, 1e-12 * before);
  EXPECT_EQ(desk.steps.size(), 3U);
}

TEST(InputsNumber, GermanLocaleChangesNothing) {
  const QLocale before;
  QLocale::setDefault(QLocale(QLocale::German, QLocale::Germany));
  Desk desk;
  desk.type("supply.voltage", "12.3");
  EXPECT_DOUBLE_EQ(desk.number("supply.voltage"), 12.3);
  desk.type("supply.voltage", "12,3");
  EXPECT_DOUBLE_EQ(desk.number("supply.voltage"), 12.3);
  QLocale::setDefault(before);
}

TEST(InputsNumber, NumbersThatAreNoneAreRefused) {
  Desk desk;
  desk.type("supply.voltage", "48");
  desk.enter("load.inertia");
  for (const char* text :
       {"1e308", "NaN", "inf", "-5", "0", "1e400", "4 8", "1.2.3", "Ω", "%%%", "\\"}) {
    auto& field = desk.enter("supply.voltage");
    field.selectAll();
    field.insert(text);  // as pasted
    EXPECT_EQ(field.property("state"), "wrong") << text;
    EXPECT_DOUBLE_EQ(desk.number("supply.voltage"), 48) << text;
    QTest::keyClick(&field, Qt::Key_Escape);
  }
}

TEST(InputsNumber, VeryLongPasteIsRefusedAndTheMessageStaysShort) {
  Desk desk;
  auto& field = desk.enter("supply.voltage");
  field.insert(QString(20000, '7'));
  QTest::keyClick(&field, Qt::Key_Return);
  EXPECT_TRUE(desk.panel.hasWrongEntry());
  EXPECT_LE(messageBelow(field).size(), 200);
  EXPECT_GE(messageBelow(field).size(), 10);
}

TEST(InputsNumber, EchoKeepsTheCursorWhereItIs) {
  Desk desk;
  auto& field = desk.type("motor.resistance", "0.48");
  field.setCursorPosition(1);
  QTest::keyClicks(&field, "0");
  EXPECT_EQ(field.text(), "00.48");
  EXPECT_EQ(field.cursorPosition(), 2);
  Project other = desk.project;  // a change elsewhere
  ASSERT_TRUE(setField(other, "load.inertia", "2"));
  desk.panel.showProject(other);
  EXPECT_EQ(field.cursorPosition(), 2);
  EXPECT_TRUE(field.hasFocus());
}

TEST(InputsNumber, LateEchoDoesNotOverwriteNewerTyping) {
  Project project = orchardArm();
  InputsPanel panel;
  std::vector<Project> versions;  // shown later than they were made
  QObject::connect(&panel, &InputsPanel::editRequested, &panel, [&](const Edit& edit) {
    ASSERT_TRUE(edit.apply(project));
    versions.push_back(project);
  });
  panel.showProject(project);
  panel.show();
  panel.activateWindow();
  ASSERT_TRUE(QTest::qWaitForWindowActive(&panel));
  panel.reveal("supply.voltage");
  auto* field = panel.findChild<NumberField*>("supply.voltage");
  QTest::keyClicks(field, "123");
  ASSERT_EQ(versions.size(), 3U);
  for (const Project& version : versions) {
    panel.showProject(version);
    EXPECT_EQ(field->text(), "123");
  }
}

TEST(InputsNumber, ValueSetElsewhereReplacesAWrongEntry) {
  Desk desk;
  auto& field = desk.type("supply.voltage", "x");
  desk.panel.showProject(desk.project);
  EXPECT_EQ(field.text(), "x");
  ASSERT_TRUE(setField(desk.project, "supply.voltage", "60"));
  desk.panel.showProject(desk.project);
  EXPECT_EQ(field.text(), "60");
  EXPECT_FALSE(desk.panel.hasWrongEntry());
}

TEST(InputsNumber, ThousandsAreGroupedAtRestWithARealMinus) {
  Desk desk;
  desk.type("load.balanceTorque", "-2480");
  desk.enter("load.inertia");
  EXPECT_EQ(desk.field("load.balanceTorque").text(), QString::fromUtf8("−2\u2009480"));
}

TEST(InputsNumber, LongNumbersAreRoundedAtRestAndWholeWhileEditing) {
  Desk desk;
  auto& field = desk.type("load.inertia", "0.12345678901234567");
  desk.enter("load.linkMass");
  EXPECT_LE(field.fontMetrics().horizontalAdvance(field.text()), field.width() - 50);
  EXPECT_TRUE(field.text().startsWith("0.1234"));
  desk.enter("load.inertia");
  EXPECT_EQ(field.text(), "0.12345678901234567");
}

}  // namespace
}  // namespace jw::test
