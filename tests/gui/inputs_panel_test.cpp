// The panel as a whole. That every catalogued field has an editor is checked against the catalogue.
#include <QElapsedTimer>

#include "tests/gui/inputs_support.h"
#include "widgets/inputs/field_text.h"
#include "widgets/inputs/fold_header.h"

namespace jw::test {
namespace {

TEST(InputsPanel, EveryCataloguedFieldHasANamedEditor) {
  Desk desk;
  const auto fields = allFields(desk.project);
  ASSERT_GT(fields.size(), 100U);
  for (const FieldRef& field : fields) {
    if (field.info->applies != nullptr && !field.info->applies(field.owner)) continue;
    auto* editor = desk.panel.findChild<QWidget*>(toQString(field.path));
    ASSERT_NE(editor, nullptr) << field.path;
    EXPECT_TRUE(editor->accessibleName().startsWith(toQString(field.info->label))) << field.path;
    EXPECT_FALSE(editor->accessibleDescription().isEmpty()) << field.path;
    EXPECT_FALSE(editor->toolTip().isEmpty()) << field.path;
    EXPECT_TRUE(editor->focusPolicy() & Qt::TabFocus) << field.path;
  }
}

TEST(InputsPanel, EverythingThatTakesTheFocusHasAnAccessibleName) {
  Desk desk;
  for (const QWidget* widget : desk.panel.findChildren<QWidget*>()) {
    const bool inner = widget->objectName().startsWith("qt_") || widget->focusProxy() != nullptr;
    if (widget->focusPolicy() == Qt::NoFocus || inner || widget->window() != &desk.panel) continue;
    EXPECT_FALSE(widget->accessibleName().isEmpty())
        << widget->metaObject()->className() << ' ' << widget->objectName().toStdString();
  }
}

TEST(InputsPanel, UnitIsPartOfTheSpokenName) {
  Desk desk;
  EXPECT_EQ(desk.field("motor.torqueConstant").accessibleName(), "Torque constant, N·m/A");
}

TEST(InputsPanel, ChoiceTextAndFlagSendEdits) {
  Desk desk;
  auto& family = desk.enter<QComboBox>("transmission[0].family");
  QTest::keyClick(&family, Qt::Key_Home);
  EXPECT_EQ(desk.text("transmission[0].family"), "planetary");
  auto& flag = desk.enter<QAbstractButton>("transmission[0].reverses");
  QTest::keyClick(&flag, Qt::Key_Space);
  EXPECT_EQ(desk.text("transmission[0].reverses"), "yes");
  desk.type<QLineEdit>("title", "Boom & hook <1>");
  EXPECT_EQ(desk.project.title, "Boom & hook <1>");
  QTest::keyClicks(&desk.enter<QWidget>("note"), "one");
  QTest::keyClick(&desk.enter<QWidget>("note"), Qt::Key_Return);
  QTest::keyClicks(&desk.enter<QWidget>("note"), "two");
  EXPECT_EQ(desk.project.note, "one\ntwo");
}

TEST(InputsPanel, TypingANameIsOneStepAndUndoBringsTheOldOne) {
  Desk desk;
  desk.type<QLineEdit>("title", "Shoulder");
  EXPECT_EQ(desk.steps.size(), 1U);
  desk.undo();
  EXPECT_EQ(desk.field<QLineEdit>("title").text(), "");
}

TEST(InputsPanel, FieldsThatDoNotApplyAreHidden) {
  Desk desk;
  desk.panel.reveal("motor.resistance");
  const auto shown = [&](const char* path) { return desk.field<QWidget>(path).isVisible(); };
  EXPECT_TRUE(shown("motor.polePairs"));
  ASSERT_TRUE(setField(desk.project, "motor.kind", "brushedDc"));
  desk.panel.showProject(desk.project);
  EXPECT_FALSE(shown("motor.polePairs"));
  EXPECT_TRUE(shown("motor.resistance"));
}

TEST(InputsPanel, WrongEntryOfAHiddenFieldIsGivenUp) {
  Desk desk;
  desk.type("motor.polePairs", "x");
  ASSERT_TRUE(desk.panel.hasWrongEntry());
  ASSERT_TRUE(setField(desk.project, "motor.kind", "brushedDc"));
  desk.panel.showProject(desk.project);
  EXPECT_FALSE(desk.panel.hasWrongEntry());
}

TEST(InputsPanel, RevealOpensScrollsAndFocuses) {
  Desk desk;
  for (const char* path :
       {"requirements.life", "transmission[1].ratio", "cycle.segments[0].travel"}) {
    desk.panel.reveal(path);
    auto& editor = desk.field<QWidget>(path);
    EXPECT_TRUE(editor.hasFocus()) << path;
    EXPECT_TRUE(editor.isVisible()) << path;
    const QRect seen(QPoint(), desk.panel.size());
    EXPECT_TRUE(seen.contains({editor.mapTo(&desk.panel, QPoint()), editor.size()})) << path;
  }
}

TEST(InputsPanel, RevealTakesSectionsAndItems) {
  Desk desk;
  for (const char* path : {"supply", "motor", "transmission", "load", "cycle", "requirements",
                           "project", "transmission[1]", "cycle.segments[2]", "controller"}) {
    desk.panel.reveal(path);
    ASSERT_NE(desk.panel.focusWidget(), nullptr);
    EXPECT_TRUE(desk.panel.focusWidget()->isVisible()) << path;
  }
  EXPECT_EQ(desk.panel.focusWidget()->objectName(), "controller.currentPeak");
  desk.panel.reveal("no.such[3].field");
  desk.panel.reveal("");
  EXPECT_EQ(desk.panel.focusWidget()->objectName(), "controller.currentPeak");
}

TEST(InputsPanel, TabGoesFromTopToBottom) {
  Desk desk;
  for (auto* header : desk.panel.findChildren<FoldHeader*>()) header->setChecked(true);
  QCoreApplication::sendPostedEvents(nullptr, QEvent::LayoutRequest);
  desk.panel.reveal("supply.voltage");
  int lowest = -1;
  int visited = 0;
  const QWidget* content = desk.panel.findChild<QScrollArea*>()->widget();
  for (const QWidget* at = desk.panel.focusWidget(); content->isAncestorOf(at); ++visited) {
    const int y = at->mapTo(content, QPoint(0, 0)).y();
    ASSERT_GE(y, lowest - 8) << at->objectName().toStdString();  // within one row
    lowest = std::max(lowest, y);
    QTest::keyClick(desk.panel.focusWidget(), Qt::Key_Tab);
    if (desk.panel.focusWidget()->mapTo(content, QPoint(0, 0)).y() < lowest - 8) break;  // round
    at = desk.panel.focusWidget();
  }
  EXPECT_GT(visited, 100);
}

TEST(InputsPanel, SectionsTurnByKeyboardAndAreRemembered) {
  Desk desk;
  auto* header = desk.panel.findChild<FoldHeader*>("section.motor.header");
  header->setFocus();
  const bool before = header->isChecked();
  QTest::keyClick(header, Qt::Key_Space);
  EXPECT_NE(header->isChecked(), before);
  QTest::keyClick(header, Qt::Key_Left);
  EXPECT_FALSE(header->isChecked());
  const QByteArray state = desk.panel.saveState();
  QTest::keyClick(header, Qt::Key_Right);
  EXPECT_TRUE(header->isChecked());
  EXPECT_TRUE(desk.panel.restoreState(state));
  EXPECT_FALSE(header->isChecked());
  EXPECT_FALSE(desk.panel.restoreState("nonsense"));
  EXPECT_FALSE(header->isChecked());
}

TEST(InputsPanel, FoldedSectionTellsOfAWrongEntryInside) {
  Desk desk;
  desk.type("motor.resistance", "abc");
  auto* header = desk.panel.findChild<FoldHeader*>("section.motor.header");
  EXPECT_TRUE(header->isWrong());
  EXPECT_TRUE(header->accessibleDescription().contains("wrong"));
  desk.panel.discardWrongEntries();
  EXPECT_FALSE(header->isWrong());
}

TEST(InputsPanel, FieldsThatAChecksWaitsForSayNeeded) {
  Desk desk;
  Evaluation evaluation;
  evaluation.checks.resize(1);
  evaluation.checks[0].missing = {"motor.resistance"};
  Snapshot snapshot;
  snapshot.evaluation = std::make_shared<const Evaluation>(evaluation);
  desk.panel.showSnapshot(snapshot);
  EXPECT_EQ(desk.field("motor.resistance").placeholderText(), "needed");
  EXPECT_EQ(desk.field("motor.inductance").placeholderText(), "not given");
  EXPECT_EQ(desk.field<FoldHeader>("section.motor.header").remark(), "1 needed");
  EXPECT_EQ(desk.field<FoldHeader>("section.transmission.header").remark(), "2 stages");
}

TEST(InputsPanel, NothingIsClippedAtItsNarrowest) {
  Desk desk;
  desk.panel.resize(desk.panel.minimumWidth(), 900);
  for (auto* header : desk.panel.findChildren<FoldHeader*>()) header->setChecked(true);
  QCoreApplication::sendPostedEvents(nullptr, QEvent::LayoutRequest);
  const QWidget* content = desk.panel.findChild<QScrollArea*>()->widget();
  EXPECT_LE(content->width(), desk.panel.minimumWidth());
  for (const QLabel* label : content->findChildren<QLabel*>()) {
    if (!label->isVisible()) continue;
    const QRect place(label->mapTo(content, QPoint()), label->size());
    EXPECT_TRUE(content->rect().contains(place)) << label->text().toStdString();
    EXPECT_GE(label->height(), label->heightForWidth(label->width()))
        << label->text().toStdString();
    EXPECT_GE(label->width(), label->minimumSizeHint().width()) << label->text().toStdString();
  }
}

TEST(InputsPanel, WordsInEmptyFieldsFit) {
  Desk desk;
  for (auto* header : desk.panel.findChildren<FoldHeader*>()) header->setChecked(true);
  QCoreApplication::sendPostedEvents(nullptr, QEvent::LayoutRequest);
  constexpr int kFrame = 20;  // border, padding and the margin of QLineEdit on both sides
  for (const NumberField* field : desk.panel.findChildren<NumberField*>()) {
    if (!field->isVisible() || !field->text().isEmpty()) continue;
    const int room = field->width() - field->textMargins().right() - kFrame;
    EXPECT_LE(field->fontMetrics().horizontalAdvance(field->placeholderText()), room)
        << field->objectName().toStdString();
  }
}

TEST(InputsPanel, ChoicesFit) {
  Desk desk;
  for (auto* box : desk.panel.findChildren<QComboBox*>()) {
    box->ensurePolished();
    EXPECT_GE(box->width(), box->sizeHint().width()) << box->objectName().toStdString();
  }
}

TEST(InputsPanel, ShowingAProjectTakesLessThanTwoMilliseconds) {
  Desk desk;
  Project other = desk.project;
  ASSERT_TRUE(setField(other, "motor.resistance", "0.5"));
  QElapsedTimer clock;
  double fastest = 1e9;  // [ms]; the fastest of many is what the work takes
  for (int k = 0; k < 30; ++k) {
    clock.start();
    desk.panel.showProject(k % 2 == 0 ? other : desk.project);
    fastest = std::min(fastest, static_cast<double>(clock.nsecsElapsed()) / 1e6);
  }
  RecordProperty("fastest_ms", std::to_string(fastest));
  EXPECT_LT(fastest, 2.0);
}

}  // namespace
}  // namespace jw::test
