#include "widgets/figures/family_study.h"

#include <algorithm>
#include <cmath>

#include <QCoreApplication>

#include "core/model/field_catalogue.h"
#include "widgets/inputs/field_text.h"
#include "widgets/panels/catalogue_files.h"
#include "widgets/theme/number_text.h"

namespace jw {

FamilyStudy compareFamilies(const FamilyQuestion& question, const StudyRun& run) {
  FamilyStudy study;
  study.question = question;
  const auto present = presentReducer(*question.project, question.request.stage);
  if (present) study.present = *present;
  auto choices = reducerFamilies(*question.project, question.request, run);
  if (choices) {
    study.choices = std::move(*choices);
  } else {
    study.refused = choices.error();
  }
  return study;
}

FamilyQuestion bundledFamilies(std::shared_ptr<const Project> project) {
  const CataloguePtr rules = bundledCatalogue(CatalogueKind::Rules);
  FamilyQuestion question;
  question.project = std::move(project);
  question.request.rules = rules->rules;
  question.own = rules->own;
  question.invented = true;
  return question;
}

Edit adoptFamilyEdit(const FamilyChoice& choice, int stage) {
  return {QCoreApplication::translate("Families", "Adopt %1").arg(familyLabel(choice.family)),
          {},
          [choice, stage](Project& project) -> tl::expected<void, InputError> {
            auto adopted = adoptFamily(project, choice, stage);
            if (!adopted) return tl::unexpected(adopted.error());
            project = std::move(*adopted);
            return {};
          }};
}

QString familyLabel(StageFamily family) {
  const auto at = static_cast<std::size_t>(family);
  return upperFirst(toQString(structInfo<Stage>().find("family")->choices[at].label));
}

bool canDoIt(const FamilyChoice& choice) { return choice.found && choice.point.worst >= 0; }

std::vector<WeightedFamily> weightedOrder(const FamilyStudy& study) {
  double whole = 0;
  for (const auto& [key, weight] : study.weights) whole += weight;
  if (!(whole > 0)) return {};
  std::vector<WeightedFamily> order;
  for (std::size_t k = 0; k < study.choices.size(); ++k) {
    const FamilyChoice& choice = study.choices[k];
    if (choice.found) order.push_back({k, 0, {}, canDoIt(choice)});
  }
  for (const FamilyProperty& property : familyProperties()) {
    const auto weight = study.weights.find(std::string(property.key));
    if (weight == study.weights.end() || !(weight->second > 0)) continue;
    std::vector<double> values;
    for (const WeightedFamily& one : order) {
      values.push_back(property.value(study.choices[one.choice]));
    }
    const std::vector<double> shares = sharesOfBest(values, property.better);
    for (std::size_t k = 0; k < order.size(); ++k) {
      if (std::isnan(shares[k])) continue;
      order[k].sum += weight->second * shares[k] / whole;
      order[k].terms << QStringLiteral("%1 × %2 %3")
                            .arg(numberText(weight->second), fixedNumber(shares[k], 2),
                                 lowerFirst(toQString(property.label)));
    }
  }
  std::stable_sort(order.begin(), order.end(), [](const auto& a, const auto& b) {
    return a.holds != b.holds ? a.holds : a.sum > b.sum;
  });
  return order;
}

}  // namespace jw
