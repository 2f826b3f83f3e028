#pragma once

#include <array>

#include <QColor>

namespace jw {

/// The colours of one theme. Hues that carry meaning are those of Okabe and Ito, "Color Universal
/// Design" (2008), some darkened for the light ground; a shape, pattern or word always says the
/// same.
struct Palette {
  bool dark = false;
  QColor ground;    ///< behind the panels
  QColor panel;     ///< panels and figures
  QColor field;     ///< editors and cards
  QColor line;      ///< hairlines
  QColor grid;      ///< lines of a figure's grid
  QColor zeroLine;  ///< axes through the origin
  QColor text;
  QColor muted;       ///< labels, units, ticks
  QColor accent;      ///< what is chosen, links, the cursor
  QColor accentSoft;  ///< ground of what is chosen or pointed at
  QColor holds;
  QColor close;
  QColor shortfall;
  QColor open;
  QColor peak;        ///< peak envelope
  QColor continuous;  ///< continuous envelope
  QColor gravity;     ///< torque by cause, and so on
  QColor inertia;
  QColor friction;
  QColor spring;
  QColor external;
  QColor flow;                  ///< power towards the joint
  QColor flowBack;              ///< power back to the supply
  QColor loss;                  ///< power lost as heat
  QColor dwell;                 ///< load path while it stands still
  std::array<QColor, 4> moves;  ///< hues of the load path's moves, repeated when there are more
};

const Palette& lightPalette();
const Palette& darkPalette();
/// Light on white, for figures that leave the window.
const Palette& printPalette();

/// Contrast ratio of two opaque colours, 1 to 21 (W3C, WCAG 2.1, "contrast ratio" and "relative
/// luminance").
double contrastRatio(const QColor& a, const QColor& b);

/// `hue` made just dark or light enough to read as text on `ground` (contrast 4.5, WCAG 2.1
/// success criterion 1.4.3).
QColor inkOf(const QColor& hue, const QColor& ground);

/// `over` laid on `ground` with the given share, opaque.
QColor blend(const QColor& over, const QColor& ground, double share);

}  // namespace jw
