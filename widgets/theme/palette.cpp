#include "widgets/theme/palette.h"

#include <algorithm>
#include <cmath>

namespace jw {
namespace {

double linear(double channel) {
  return channel <= 0.03928 ? channel / 12.92 : std::pow((channel + 0.055) / 1.055, 2.4);
}

double luminance(const QColor& c) {
  return 0.2126 * linear(c.redF()) + 0.7152 * linear(c.greenF()) + 0.0722 * linear(c.blueF());
}

Palette makeLight() {
  Palette p;
  p.ground = "#F3F5F7";
  p.panel = "#FFFFFF";
  p.field = "#F8F9FB";
  p.line = "#DCE1E6";
  p.grid = "#ECEEF1";
  p.zeroLine = "#8B959E";
  p.text = "#1B2127";
  p.muted = "#5C6873";
  p.accent = "#0072B2";
  p.accentSoft = "#E6F1F8";
  p.holds = "#008561";
  p.close = "#C77700";
  p.shortfall = "#C4460F";
  p.open = p.muted;
  p.peak = "#C77700";
  p.continuous = "#008561";
  p.gravity = "#009E73";
  p.inertia = "#CC79A7";
  p.friction = "#D55E00";
  p.spring = "#56B4E9";
  p.external = "#0072B2";
  p.flow = "#B9D8EA";
  p.flowBack = "#EBC9DC";
  p.loss = "#F1CBB8";
  p.dwell = p.muted;
  p.moves = {QColor("#0072B2"), QColor("#CC79A7"), QColor("#D55E00"), QColor("#56B4E9")};
  return p;
}

Palette makeDark() {
  Palette p;
  p.dark = true;
  p.ground = "#15191E";
  p.panel = "#1C2127";
  p.field = "#242A31";
  p.line = "#2C333B";
  p.grid = "#293038";
  p.zeroLine = "#77828D";
  p.text = "#E7EAEE";
  p.muted = "#93A0AD";
  p.accent = "#56B4E9";
  p.accentSoft = "#223442";
  p.holds = "#2FBF93";
  p.close = "#E69F00";
  p.shortfall = "#F0743A";
  p.open = p.muted;
  p.peak = "#E69F00";
  p.continuous = "#2FBF93";
  p.gravity = "#2FBF93";
  p.inertia = "#E39AC2";
  p.friction = "#F0743A";
  p.spring = "#56B4E9";
  p.external = "#F0E442";
  p.flow = "#2B4C61";
  p.flowBack = "#573850";
  p.loss = "#5C3826";
  p.dwell = p.muted;
  p.moves = {QColor("#56B4E9"), QColor("#CC79A7"), QColor("#F0743A"), QColor("#F0E442")};
  return p;
}

Palette makePrint() {
  Palette p = makeLight();
  p.ground = p.panel = "#FFFFFF";
  p.field = "#F8F9FB";
  p.grid = "#E4E7EA";
  return p;
}

}  // namespace

const Palette& lightPalette() {
  static const Palette palette = makeLight();
  return palette;
}

const Palette& darkPalette() {
  static const Palette palette = makeDark();
  return palette;
}

const Palette& printPalette() {
  static const Palette palette = makePrint();
  return palette;
}

double contrastRatio(const QColor& a, const QColor& b) {
  const double first = luminance(a) + 0.05;
  const double second = luminance(b) + 0.05;
  return std::max(first, second) / std::min(first, second);
}

QColor inkOf(const QColor& hue, const QColor& ground) {
  const bool lighten = luminance(ground) < 0.18;
  QColor ink = hue;
  for (int step = 0; step < 40 && contrastRatio(ink, ground) < 4.5; ++step) {
    const float light = std::clamp(ink.lightnessF() + (lighten ? 0.02F : -0.02F), 0.0F, 1.0F);
    ink = QColor::fromHslF(std::max(ink.hslHueF(), 0.0F), ink.hslSaturationF(), light);
  }
  return QColor(ink.rgb());
}

QColor blend(const QColor& over, const QColor& ground, double share) {
  const auto mix = [share](int a, int b) { return qRound(b + (a - b) * share); };
  return {mix(over.red(), ground.red()), mix(over.green(), ground.green()),
          mix(over.blue(), ground.blue())};
}

}  // namespace jw
