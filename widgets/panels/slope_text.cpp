#include "widgets/panels/slope_text.h"

#include <algorithm>

#include <QStringList>

#include "widgets/theme/number_text.h"

namespace jw {
namespace {

QString signedNumber(double value) {
  const QString sign = value > 0 ? QStringLiteral("+") : QString();
  return sign + numberText(value, 2);
}

QString slopeNumber(const InputSlope& slope) {
  if (!slope.corner) return signedNumber(slope.slope);
  return QStringLiteral("%1 down, %2 up")
      .arg(signedNumber(-slope.below), signedNumber(slope.above));
}

/// "+1 % reach → −2.2 %": what a margin does; either way at a corner.
QString slopeSentence(const QString& input, const InputSlope& slope) {
  if (!slope.corner) return QStringLiteral("+1 % %1 → %2 %").arg(input, signedNumber(slope.slope));
  return QStringLiteral("∓1 % %1 → %2 / %3 %")
      .arg(input, signedNumber(-slope.below), signedNumber(slope.above));
}

std::ptrdiff_t shownOf(const MarginSlopes& check) {
  return std::ptrdiff_t(std::min(kMostInputs, check.inputs.size()));
}

template <class Item>
QString listed(const MarginSlopes& check, const QString& between, const Item& item) {
  QStringList parts;
  for (auto at = check.inputs.begin(); at != check.inputs.begin() + shownOf(check); ++at)
    parts << item(*at);
  return parts.join(between);
}

QString labelOf(const Sensitivities& slopes, const InputSlope& slope, const Project& project) {
  return QString::fromStdString(inputLabel(project, slopes.inputs[slope.input]));
}

QString briefLabel(const Sensitivities& slopes, const InputSlope& slope) {
  const std::string_view label = slopes.inputs[slope.input].info->label;
  return QString::fromUtf8(label.data(), qsizetype(label.size())).toLower();
}

}  // namespace

QString dependsText(const Sensitivities& slopes, const MarginSlopes& check,
                    const Project& project) {
  return listed(check, QStringLiteral(" · "), [&](const InputSlope& slope) {
    const QString brief = briefLabel(slopes, slope);
    const auto alike =
        std::count_if(check.inputs.begin(), check.inputs.begin() + shownOf(check),
                      [&](const InputSlope& other) { return briefLabel(slopes, other) == brief; });
    return slopeSentence(alike > 1 ? labelOf(slopes, slope, project) : brief, slope);
  });
}

QString dependsHtml(const Sensitivities& slopes, const MarginSlopes& check, const Project& project,
                    const Palette& palette) {
  const QString inputs = listed(check, QStringLiteral(", "), [&](const InputSlope& slope) {
    const QString path = QString::fromStdString(slopes.inputs[slope.input].path);
    return QStringLiteral(
               "<a href='field:%1' style='color:%2; text-decoration:none'>%3</a> "
               "<span style='color:%5'>%4</span>")
        .arg(path.toHtmlEscaped(), palette.accent.name(),
             labelOf(slopes, slope, project).toHtmlEscaped(),
             slopeNumber(slope).replace(u' ', QChar::Nbsp), palette.text.name());
  });
  return inputs.isEmpty()
             ? QString()
             : QStringLiteral("Depends most on %1: points of margin for 1 % more.").arg(inputs);
}

}  // namespace jw
