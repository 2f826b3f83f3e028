#include "core/checks/headline_quantities.h"

#include <vector>

#include <fmt/format.h>

#include "core/checks/headline_rows.h"

namespace jw {
namespace {

const std::vector<Headline>& headlines() {
  static const std::vector<Headline> kAll = [] {
    std::vector<Headline> all;
    for (const auto& family : {motionHeadlines(), chainHeadlines(), motorHeadlines(),
                               supplyHeadlines(), jointHeadlines()}) {
      all.insert(all.end(), family.begin(), family.end());
    }
    return all;
  }();
  return kAll;
}

/// The working's last lines: what the symbols give.
void showFigure(const Headline& headline, double value, const CheckWriter& writer,
                Working& working) {
  const bool known = isSet(value);
  working.result = fmt::format("{}: {}", headline.label,
                               known ? formatQuantity(value, headline.quantity, headline.unit)
                                     : "open, an input is missing");
  if (!known) return;
  working.results.push_back({"Result",
                             std::string(headline.label),
                             value,
                             headline.quantity,
                             headline.unit,
                             "result",
                             {},
                             writer.demandFrom()});
}

}  // namespace

std::vector<NamedQuantity> headlineQuantities(const Project& project, const Evaluation& result) {
  std::vector<NamedQuantity> all;
  for (const Headline& headline : headlines()) {
    const double value = headline.known(result) ? headline.value(project, result) : kUnset;
    all.push_back({headline.id, headline.label, value, headline.quantity, headline.unit});
  }
  return all;
}

Working explainQuantity(const Project& project, const Evaluation& evaluation, std::string_view id) {
  Working working;
  for (const Headline& headline : headlines()) {
    if (headline.id != id) continue;
    working.formula = headline.formula;
    const CheckContext context{project, evaluation, -1};
    Check scratch;
    CheckWriter writer(context, scratch, &working);
    if (headline.known(evaluation)) headline.work(context, writer);
    if (working.source.empty()) working.source = headline.source;
    showFigure(headline, quantityValue(evaluation, id), writer, working);
  }
  return working;
}

}  // namespace jw
