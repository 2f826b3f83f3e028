#include "widgets/figures/family_view.h"

#include <algorithm>
#include <cmath>

#include <QCoreApplication>

#include "widgets/figures/finite.h"
#include "widgets/inputs/field_text.h"
#include "widgets/theme/marks.h"
#include "widgets/theme/number_text.h"

namespace jw {
namespace {

QString tr(const char* text) { return QCoreApplication::translate("Families", text); }

using Choices = std::vector<const FamilyChoice*>;  // null where there is none

/// The stage as it stands, then every family.
Choices columnsOf(const FamilyStudy& study) {
  Choices all{study.present && study.present->found ? &*study.present : nullptr};
  for (const FamilyChoice& choice : study.choices) all.push_back(choice.found ? &choice : nullptr);
  return all;
}

double shownValue(const FamilyProperty& property, const FamilyChoice& choice) {
  const double value = finiteOrGap(property.value(choice));
  return std::isnan(value) ? value : fromInternal(value, property.unit, property.quantity);
}

QString betterWords(int better) {
  if (better == 0) return tr("which is better depends on the use");
  return better > 0 ? tr("more is better") : tr("less is better");
}

QString propertyTitle(const FamilyProperty& property) {
  const QString unit = toQString(prettyUnit(property.unit));
  QString title = toQString(property.label);
  if (!unit.isEmpty()) title += QStringLiteral(", ") + unit;
  if (property.better != 0)
    title += property.better > 0 ? QStringLiteral(" ↑") : QStringLiteral(" ↓");
  return title;
}

std::vector<double> valuesOf(const FamilyProperty& property, const Choices& choices) {
  std::vector<double> values;
  for (const FamilyChoice* one : choices) {
    values.push_back(one ? shownValue(property, *one) : kUnset);
  }
  return values;
}

/// The best of the families that can do the job, the present stage apart; NaN where none is better.
double bestOf(const std::vector<double>& values, int better, const Choices& choices) {
  double best = kUnset;
  for (std::size_t k = 1; k < values.size() && better != 0; ++k) {
    if (std::isnan(values[k]) || !canDoIt(*choices[k])) continue;
    if (std::isnan(best) || better * values[k] > better * best) best = values[k];
  }
  return best;
}

FamilyRow propertyRow(const FamilyProperty& property, const Choices& choices) {
  FamilyRow row{FamilyRow::Kind::Property, std::string(property.key), propertyTitle(property),
                toQString(property.label) + QStringLiteral(": ") + betterWords(property.better)};
  const std::vector<double> values = valuesOf(property, choices);
  const double best = bestOf(values, property.better, choices);
  double largest = 0;
  for (const double value : values) largest = std::max(largest, std::isnan(value) ? 0 : value);
  for (std::size_t k = 0; k < values.size(); ++k) {
    const double value = values[k];
    FamilyCell cell{std::isnan(value) ? QStringLiteral("–") : numberText(value)};
    if (largest > 0 && !std::isnan(value)) cell.bar = std::clamp(value / largest, 0.0, 1.0);
    cell.best = value == best && canDoIt(*choices[k]);
    row.cells.push_back(std::move(cell));
  }
  row.cells.front().best = false;
  return row;
}

CheckState stateOf(const FamilyChoice& choice, double target) {
  if (!isSet(choice.point.worst)) return CheckState::Open;
  if (choice.point.worst < 0) return CheckState::Short;
  return choice.point.worst < target ? CheckState::Close : CheckState::Holds;
}

FamilyRow verdictRow(const FamilyStudy& study, const Choices& choices) {
  FamilyRow row{FamilyRow::Kind::Verdict,
                {},
                tr("Smallest margin"),
                tr("Of every check of the whole joint with this reducer")};
  const double target = study.question.project->requirements.targetMargin;
  for (const FamilyChoice* one : choices) {
    if (!one) {
      row.cells.push_back({row.cells.empty() ? QStringLiteral("–") : tr("none fits")});
      continue;
    }
    FamilyCell cell{marginText(one->point.worst)};
    cell.state = stateOf(*one, target);
    cell.tip = toQString(stateName(*cell.state)) + QStringLiteral(", ") +
               tr("tightest: %1").arg(tightestOf(*one));
    row.cells.push_back(std::move(cell));
  }
  return row;
}

FamilyRow wordsRow(const QString& title, const Choices& choices,
                   const std::function<QString(const FamilyChoice&)>& words) {
  FamilyRow row{FamilyRow::Kind::Words, {}, title, {}};
  for (const FamilyChoice* one : choices) {
    const QString text = one ? words(*one) : QString();
    row.cells.push_back({text, kUnset, false, {}, text, true});
  }
  return row;
}

FamilyRow groupRow(const QString& title) { return {FamilyRow::Kind::Group, {}, title, {}}; }

void addOwn(FamilyTable& table, const FamilyStudy& study, const Choices& choices) {
  if (study.question.own.empty()) return;
  table.rows.push_back(groupRow(tr("Practical")));
  for (const OwnColumn& own : study.question.own) {
    table.rows.push_back(wordsRow(toQString(own.title), choices, [&](const FamilyChoice& one) {
      return toQString(own.of(one.family));
    }));
    table.rows.back().cells.front() = {};  // said of families, not of the stage as it stands
  }
}

void addWeighted(FamilyTable& table, const FamilyStudy& study) {
  const std::vector<WeightedFamily> order = weightedOrder(study);
  if (order.empty()) return;
  FamilyRow row{FamilyRow::Kind::Weighted,
                {},
                tr("By your weights"),
                tr("Sum of weight × share over the weights; a share is 1 for the best of the "
                   "families and 0 for the worst. Those with which a verdict is short come last")};
  row.cells.resize(std::size_t(table.columns.size()));
  for (std::size_t place = 0; place < order.size(); ++place) {
    const WeightedFamily& one = order[place];
    row.cells[one.choice + 1] = {
        one.holds ? QStringLiteral("%1. %2").arg(place + 1).arg(fixedNumber(one.sum, 2))
                  : tr("short"),
        one.sum,
        place == 0 && one.holds,
        {},
        one.terms.join(QStringLiteral("\n+ "))};
  }
  table.rows.push_back(std::move(row));
}

/// A choice's place on an axis, added to the axis' extent.
void stretch(ChartAxis& axis, double value, bool first) {
  axis.low = first ? value : std::min(axis.low, value);
  axis.high = first ? value : std::max(axis.high, value);
}

void pad(ChartAxis& axis) {
  const double room = axis.high > axis.low ? 0.12 * (axis.high - axis.low)
                                           : std::max(0.1 * std::abs(axis.low), 0.1);
  axis.low -= room;
  axis.high += room;
}

}  // namespace

QString tightestOf(const FamilyChoice& choice) {
  if (choice.point.worstAt < 0) return {};
  const PointMargin& worst = choice.point.margins[std::size_t(choice.point.worstAt)];
  for (const MarginColumn& column : choice.verdicts) {
    if (worst.is(column.id, column.stage)) return toQString(column.title);
  }
  return toQString(worst.id);
}

FamilyTable familyTable(const FamilyStudy& study) {
  FamilyTable table;
  const Choices choices = columnsOf(study);
  table.columns << tr("As it is");
  for (std::size_t k = 0; k < study.choices.size(); ++k) {
    table.columns << familyLabel(study.choices[k].family);
    table.choices.push_back(k);
  }
  table.rows.push_back(groupRow(tr("Verdict")));
  table.rows.push_back(verdictRow(study, choices));
  table.rows.push_back(wordsRow(tr("Tightest check"), choices, &tightestOf));
  addWeighted(table, study);
  if (!study.byRules()) {
    table.rows.push_back(wordsRow(tr("Of the catalogue"), choices, [](const FamilyChoice& one) {
      return toQString(one.stage.name);
    }));
    table.rows.back().cells.front() = {};
  }
  std::string_view group;
  for (const FamilyProperty& property : familyProperties()) {
    if (property.group != group) table.rows.push_back(groupRow(toQString(property.group)));
    group = property.group;
    table.rows.push_back(propertyRow(property, choices));
  }
  addOwn(table, study, choices);
  return table;
}

LineChart familyMap(const FamilyStudy& study) {
  LineChart chart;
  const FamilyProperty* x = findFamilyProperty(study.x);
  const FamilyProperty* y = findFamilyProperty(study.y);
  if (!x || !y) return chart;
  const Choices choices = columnsOf(study);
  const double target = study.question.project->requirements.targetMargin;
  bool first = true;
  for (std::size_t k = 0; k < choices.size(); ++k) {
    if (!choices[k]) continue;
    const QPointF at(shownValue(*x, *choices[k]), shownValue(*y, *choices[k]));
    if (std::isnan(at.x()) || std::isnan(at.y())) continue;
    stretch(chart.x, at.x(), first);
    stretch(chart.y, at.y(), first);
    first = false;
    const bool present = k == 0;
    const CheckState state = stateOf(*choices[k], target);
    const QString name = present ? tr("as it is") : familyLabel(choices[k]->family);
    const auto hue = state == CheckState::Short   ? &Palette::shortfall
                     : state == CheckState::Close ? &Palette::close
                                                  : &Palette::holds;
    chart.points.push_back({at, name + u' ' + stateCharacter(state),
                            present ? PlotMark::Shape::Target : PlotMark::Shape::Disc,
                            present ? &Palette::text : hue, present});
  }
  if (first) return chart;
  pad(chart.x);
  pad(chart.y);
  chart.x.title = propertyTitle(*x);
  chart.y.title = propertyTitle(*y);
  chart.lines.emplace_back();  // none: the points are what it shows
  chart.title = tr("Families");
  chart.remark = tr("↑ more is better, ↓ less is better; ● holds ▲ close ■ short");
  return chart;
}

}  // namespace jw
