#include <gtest/gtest.h>

#include <QFontMetricsF>

#include "widgets/theme/marks.h"
#include "widgets/theme/number_text.h"
#include "widgets/theme/symbol_text.h"
#include "widgets/theme/theme.h"

namespace jw {
namespace {

// W3C, WCAG 2.1, definition of contrast ratio: black on white is 21 to 1, a colour on itself 1
// to 1.
TEST(Contrast, IsThatOfTheStandardAtItsEnds) {
  EXPECT_NEAR(contrastRatio(Qt::black, Qt::white), 21, 1e-6);
  EXPECT_NEAR(contrastRatio(QColor("#777777"), QColor("#777777")), 1, 1e-9);
  // #767676 is the lightest grey that passes 4.5 on white (WebAIM and others; from memory).
  EXPECT_GE(contrastRatio(QColor("#767676"), Qt::white), 4.5);
  EXPECT_LT(contrastRatio(QColor("#777777"), Qt::white), 4.5);
}

class PaletteTest : public ::testing::TestWithParam<const Palette*> {};

// W3C, WCAG 2.1, success criterion 1.4.3: text has a contrast of at least 4.5 to 1.
TEST_P(PaletteTest, TextCanBeReadOnEveryGround) {
  const Palette& p = *GetParam();
  for (const QColor& ground : {p.ground, p.panel, p.field, p.accentSoft}) {
    EXPECT_GE(contrastRatio(p.text, ground), 4.5) << ground.name().toStdString();
    EXPECT_GE(contrastRatio(p.muted, ground), 4.5) << ground.name().toStdString();
    EXPECT_GE(contrastRatio(p.accent, ground), 4.5) << ground.name().toStdString();
  }
}

TEST_P(PaletteTest, EveryHueHasAReadableInk) {
  const Palette& p = *GetParam();
  std::vector<QColor> hues{p.accent, p.holds,      p.close,   p.shortfall, p.open,
                           p.peak,   p.continuous, p.gravity, p.inertia,   p.friction,
                           p.spring, p.external,   p.dwell};
  hues.insert(hues.end(), p.moves.begin(), p.moves.end());
  for (const QColor& hue : hues) {
    const QColor ink = inkOf(hue, p.panel);
    EXPECT_GE(contrastRatio(ink, p.panel), 4.5) << hue.name().toStdString();
    EXPECT_LT(std::abs(ink.hslHue() - hue.hslHue()), 6)
        << "the hue stays: " << hue.name().toStdString();
  }
}

// W3C, WCAG 2.1, success criterion 1.4.11: graphics have a contrast of at least 3 to 1.
TEST_P(PaletteTest, VerdictShapesStandOut) {
  const Palette& p = *GetParam();
  for (const auto state :
       {CheckState::Holds, CheckState::Close, CheckState::Short, CheckState::Open})
    EXPECT_GE(contrastRatio(stateColour(state, p), p.panel), 3);
}

INSTANTIATE_TEST_SUITE_P(All, PaletteTest,
                         ::testing::Values(&lightPalette(), &darkPalette(), &printPalette()));

TEST(Fonts, AllDigitsAreEquallyWide) {
  const QFontMetricsF metrics(tabularFont());
  for (const char* digit : {"1", "2", "3", "4", "5", "6", "7", "8", "9"})
    EXPECT_DOUBLE_EQ(metrics.horizontalAdvance(QString(digit).repeated(4)),
                     metrics.horizontalAdvance("0000"));
}

TEST(StyleSheet, NamesOnlyColoursThatExist) {
  const QString sheet = styleSheetOf(darkPalette());
  EXPECT_FALSE(sheet.contains(u'@'));
  EXPECT_FALSE(sheet.contains("#000000"));
}

// ISO 80000-1, 7.3.1: digits in groups of three with a small space; minus sign as a dash.
TEST(NumberText, GroupsDigitsAndWritesARealMinus) {
  EXPECT_EQ(fixedNumber(-2480, 0), QStringLiteral("−2\u2009480"));
  EXPECT_EQ(fixedNumber(1234567.26, 1), QStringLiteral("1\u2009234\u2009567.3"));
  EXPECT_EQ(fixedNumber(-0.001, 1), QStringLiteral("0.0")) << "no minus before nothing";
}

TEST(NumberText, MarginsSayTheirSign) {
  EXPECT_EQ(marginText(0.84), QStringLiteral("+84 %"));
  EXPECT_EQ(marginText(-0.31), QStringLiteral("−31 %"));
  EXPECT_EQ(marginText(INFINITY), QStringLiteral("no demand"));
  EXPECT_EQ(marginText(NAN), QStringLiteral("–"));
}

// Expected runs follow from the notation that the field catalogue documents: '_' starts a
// subscript.
TEST(SymbolText, SetsSubscriptsAndSuperscripts) {
  EXPECT_EQ(symbolHtml("T_av"), "T<sub>av</sub>");
  EXPECT_EQ(symbolHtml("I_c² t"), "I<sub>c</sub>² t");
  EXPECT_EQ(symbolHtml("(T_r / T_av)^3"), "(T<sub>r</sub> / T<sub>av</sub>)<sup>3</sup>");
  EXPECT_EQ(symbolHtml("e^{-t/tau}"), "e<sup>-t/tau</sup>");
  EXPECT_EQ(symbolHtml("a < b"), "a &lt; b");
  EXPECT_EQ(symbolPlain("R_12"), QStringLiteral("R₁₂"));
  EXPECT_EQ(symbolPlain("T_av"), "T_av");
}

}  // namespace
}  // namespace jw
