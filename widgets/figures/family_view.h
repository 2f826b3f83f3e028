#pragma once

#include <functional>
#include <optional>

#include <QPainter>

#include "core/checks/check.h"
#include "widgets/figures/family_study.h"
#include "widgets/figures/line_chart.h"
#include "widgets/snapshot.h"

namespace jw {

/// One cell of the comparison.
struct FamilyCell {
  QString text;
  double bar = kUnset;  ///< 0 to 1 of the row's largest; NaN = none
  bool best = false;    ///< of the row
  std::optional<CheckState> state = {};
  QString tip = {};
  bool words = false;  ///< takes several lines where there is room
};

struct FamilyRow {
  enum class Kind { Group, Property, Verdict, Words, Weighted };
  Kind kind = Kind::Property;
  std::string key;  ///< of a property
  QString title;
  QString tip;
  std::vector<FamilyCell> cells = {};  ///< one for each column; none of a group
};

/// The comparison as a table: the stage as it stands, then the families.
struct FamilyTable {
  QStringList columns;
  std::vector<std::size_t> choices;  ///< of the columns after the first
  std::vector<FamilyRow> rows;
};

FamilyTable familyTable(const FamilyStudy& study);

/// Two of the properties against one another, one named point a family.
LineChart familyMap(const FamilyStudy& study);

/// The tightest check of a choice, "Drive life, stage 2".
QString tightestOf(const FamilyChoice& choice);

/// [px] that the words of a cell need at a column's width; 0 for numbers.
double familyCellHeight(const FamilyCell& cell, double width, const QFont& font);

/// One cell into `rect`: number, bar below it, state before it.
void paintFamilyCell(QPainter& painter, const QRectF& rect, const FamilyCell& cell,
                     const QFont& font, const Palette& palette);

/// The table and the map for print.
void paintFamilies(QPainter& painter, const QSizeF& size, const Snapshot& snapshot);
LineChart printedFamilyMap(const Snapshot& snapshot);

}  // namespace jw
