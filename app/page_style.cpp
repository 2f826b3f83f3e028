#include "app/page_style.h"

#include "widgets/theme/theme.h"

namespace jw {
namespace {

struct Mark {
  QColor color;
  const char* shape;
};

Mark markOf(CheckState state) {
  const Palette& colors = printPalette();
  switch (state) {
    case CheckState::Holds: return {colors.holds, "●"};
    case CheckState::Close: return {colors.close, "▲"};
    case CheckState::Short: return {colors.shortfall, "■"};
    case CheckState::Open: break;
  }
  return {colors.open, "○"};
}

}  // namespace

QString pageStyleSheet(int unitsPerPoint, double pointSize) {
  const double scale = pointSize / 9;
  const auto px = [&](double points) {
    return QString::number(qRound(points * scale * unitsPerPoint));
  };
  const Palette& colors = printPalette();
  const auto ink = [](const QColor& color) { return inkOf(color, Qt::white).name(); };
  return QString(
             "body{color:%1} h1{font-size:%2px;font-weight:600;margin:0}"
             "h2{font-size:%3px;font-weight:600;margin-top:%4px;margin-bottom:%5px}"
             "h3{font-size:%6px;font-weight:600;margin-top:%5px;margin-bottom:%7px}"
             "p{margin-top:%7px;margin-bottom:%7px} .muted{color:%8} .formula{font-size:%6px}"
             "td{padding-top:%7px;padding-bottom:%7px;padding-right:%5px}")
      .arg(colors.text.name(), px(20), px(13), px(12), px(6), px(10), px(1.5), ink(colors.muted));
}

QString stateHtml(CheckState state) {
  const Mark mark = markOf(state);
  const std::string_view name = stateName(state);
  return QString("<span style=\"color:%1\">%2&nbsp;%3</span>")
      .arg(inkOf(mark.color, Qt::white).name(), QString::fromUtf8(mark.shape),
           QString::fromUtf8(name.data(), static_cast<qsizetype>(name.size())));
}

}  // namespace jw
