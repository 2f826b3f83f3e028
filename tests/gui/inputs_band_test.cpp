// The tolerance band of a field. Bands as core/model/band.h reads them; how an entry behaves is the
// contract of widgets/inputs/band_field.h and widgets/edit.h.
#include <QLabel>

#include "core/model/band.h"
#include "tests/gui/inputs_support.h"
#include "widgets/inputs/band_field.h"

namespace jw::test {
namespace {

constexpr auto kPayload = "load.payloadMass";
constexpr auto kBand = "load.payloadMass.band";

std::string bandOf(const Desk& desk, const char* path) {
  return bandText(*findField(desk.project, path));
}

/// Asks for the band of the payload by key and types it.
BandField& typeBand(Desk& desk, const QString& text) {
  auto& number = desk.enter(kPayload);
  QTest::keyClicks(&number, QStringLiteral("±"));
  auto& band = desk.field<BandField>(kBand);
  QTest::keyClicks(&band, text);
  return band;
}

TEST(InputsBand, PlusMinusOpensItAndWhatIsTypedIsSent) {
  Desk desk;
  desk.type(kPayload, "3 kg");
  auto& band = typeBand(desk, "5 % normal");
  EXPECT_TRUE(band.hasFocus());
  EXPECT_TRUE(band.isVisible());
  EXPECT_EQ(bandOf(desk, kPayload), "5 % normal");
  EXPECT_EQ(desk.text(kPayload), "3 kg");
  const auto banded = bandedFields(desk.project);
  ASSERT_EQ(banded.size(), 1u);
  EXPECT_EQ(banded[0].band.shape, BandShape::Normal);
  EXPECT_EQ(desk.edits.back().description, "Change the band of payload");
}

TEST(InputsBand, OneStayIsOneStepAndUndoTakesItAway) {
  Desk desk;
  desk.type(kPayload, "3 kg");
  const std::size_t before = desk.steps.size();
  auto& band = typeBand(desk, "0.2 kg");
  EXPECT_EQ(desk.steps.size(), before + 1);
  desk.undo();
  EXPECT_EQ(bandOf(desk, kPayload), "");
  EXPECT_EQ(band.text(), "");
  EXPECT_EQ(desk.text(kPayload), "3 kg");
}

TEST(InputsBand, AWrongBandIsMarkedAndNotSent) {
  Desk desk;
  auto& band = typeBand(desk, "2 %");
  const std::size_t sent = desk.edits.size();
  band.selectAll();
  QTest::keyClicks(&band, "much");
  EXPECT_EQ(desk.edits.size(), sent);
  EXPECT_EQ(bandOf(desk, kPayload), "2 %");
  EXPECT_TRUE(desk.panel.hasWrongEntry());
  desk.enter("supply.voltage");
  const auto* message = desk.panel.findChild<QLabel*>(QString(kPayload) + ".message");
  ASSERT_NE(message, nullptr);
  EXPECT_TRUE(message->isVisible());
  EXPECT_TRUE(message->text().contains("± 5 %")) << message->text().toStdString();
  desk.panel.discardWrongEntries();
  EXPECT_FALSE(desk.panel.hasWrongEntry());
  EXPECT_EQ(band.text(), "2 %");
}

TEST(InputsBand, EscapeGoesBackAndEmptyTakesItAway) {
  Desk desk;
  auto& band = typeBand(desk, "2 %");
  desk.enter("supply.voltage");
  band.setFocus();
  band.selectAll();
  QTest::keyClicks(&band, "7 %");
  QTest::keyClick(&band, Qt::Key_Escape);
  EXPECT_EQ(bandOf(desk, kPayload), "2 %");
  band.selectAll();
  QTest::keyClick(&band, Qt::Key_Delete);
  EXPECT_EQ(bandOf(desk, kPayload), "");
  EXPECT_TRUE(band.isVisible());  // until it is left
  desk.enter("supply.voltage");
  EXPECT_FALSE(band.isVisible());
}

TEST(InputsBand, IsShownForANumberThatHasOne) {
  Project project = orchardArm();
  ASSERT_TRUE(setField(project, kPayload, "3 kg"));
  ASSERT_TRUE(setBand(project, kPayload, "± 0.1 kg triangular"));
  Desk desk(project);
  desk.enter(kPayload);
  EXPECT_TRUE(desk.field<BandField>(kBand).isVisible());
  EXPECT_EQ(desk.field<BandField>(kBand).text(), "± 0.1 kg triangular");
}

TEST(InputsBand, WholeNumbersHaveNone) {
  Desk desk;
  auto& teeth = desk.enter("motor.polePairs");
  QTest::keyClicks(&teeth, QStringLiteral("±"));
  EXPECT_EQ(desk.panel.findChild<BandField*>("motor.polePairs.band"), nullptr);
}

}  // namespace
}  // namespace jw::test
