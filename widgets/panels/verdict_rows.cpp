#include "widgets/panels/verdict_rows.h"

#include <algorithm>
#include <array>
#include <cmath>

#include <QStringList>

#include "core/checks/acceptance_check.h"
#include "core/checks/check_order.h"
#include "widgets/figures/missing_text.h"
#include "widgets/panels/slope_text.h"
#include "widgets/theme/number_text.h"

namespace jw {
namespace {

QString amountsOf(const Check& check) {
  const double first = check.capacityIsResult ? check.capacity : check.demand;
  const double second = check.capacityIsResult ? check.demand : check.capacity;
  const double shown = fromInternal(first, check.unit, check.quantity);
  return numberText(shown) +
         (check.capacityIsResult ? QStringLiteral(", wanted ") : QStringLiteral(" of ")) +
         quantityText(second, check.quantity, check.unit);
}

QString needsOf(const Check& check, const Project& project) {
  QStringList names;
  for (const std::string& path : check.missing) names << fieldLabel(project, path).toLower();
  return QStringLiteral("needs ") + names.join(QStringLiteral(", "));
}

QString stateWord(CheckState state) {
  const std::string_view name = stateName(state);
  return QString::fromUtf8(name.data(), qsizetype(name.size()));
}

/// A verdict that holds by now asks for nothing: that it was accepted is left to its working.
void sayAccepted(VerdictRow& row, const Check& check) {
  if (!check.accepted || check.state == CheckState::Holds) return;
  row.accepted = standsAccepted(check);
  row.acceptance = row.accepted ? QStringLiteral("accepted") : QStringLiteral("reopened");
  row.sentence += QStringLiteral(", ") + QString::fromStdString(acceptedText(check));
}

VerdictRow rowOf(const Check& check, const Project& project) {
  VerdictRow row;
  row.id = QString::fromUtf8(check.id.data(), qsizetype(check.id.size()));
  row.stage = check.stage;
  row.title = QString::fromStdString(check.title);
  row.state = check.state;
  row.margin = check.margin;
  const bool open = check.state == CheckState::Open;
  if (open && !check.missing.empty()) {
    row.amounts = needsOf(check, project);
    row.missingField = QString::fromStdString(check.missing.front());
  }
  if (!open) row.amounts = amountsOf(check);
  row.marginText = open ? QStringLiteral("open") : marginText(check.margin);
  row.sentence = QStringLiteral("%1, %2: %3").arg(row.title, stateWord(check.state), row.amounts);
  if (!open) row.sentence += QStringLiteral(", margin ") + row.marginText;
  sayAccepted(row, check);
  return row;
}

/// A demand without bound, at −1, has no slopes.
void addDepends(VerdictRow& row, const Check& check, const Snapshot& snapshot) {
  if (!snapshot.sensitivities) {
    row.dependsLines = std::isfinite(check.margin) && check.margin > -1 ? int(kMostInputs) : 0;
    return;
  }
  const MarginSlopes* slopes = snapshot.sensitivities->of(check.id, check.stage);
  if (!slopes) return;
  row.depends = dependsText(*snapshot.sensitivities, *slopes, *snapshot.evaluatedProject);
  row.dependsLines = int(std::min(kMostInputs, slopes->inputs.size()));
}

}  // namespace

std::vector<VerdictRow> verdictRows(const Snapshot& snapshot) {
  std::vector<VerdictRow> rows;
  if (!snapshot.evaluation || !snapshot.evaluatedProject) return rows;
  for (const Check* check : worstFirst(snapshot.evaluation->checks)) {
    rows.push_back(rowOf(*check, *snapshot.evaluatedProject));
    addDepends(rows.back(), *check, snapshot);
  }
  return rows;
}

QString verdictCounts(const std::vector<VerdictRow>& rows) {
  std::array<int, 4> counts{};
  for (const VerdictRow& row : rows) ++counts[std::size_t(rankOf(row.state))];
  const std::array<QString, 4> words{
      QStringLiteral("short"), QStringLiteral("close"), QStringLiteral("open"),
      counts[3] == 1 ? QStringLiteral("holds") : QStringLiteral("hold")};
  QStringList parts;
  for (std::size_t i = 0; i < counts.size(); ++i)
    if (counts[i] > 0) parts << QStringLiteral("%1 %2").arg(counts[i]).arg(words[i]);
  return parts.join(QStringLiteral(" · "));
}

}  // namespace jw
