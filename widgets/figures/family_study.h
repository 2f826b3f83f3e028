#pragma once

#include <map>
#include <memory>
#include <optional>
#include <string>

#include <QString>
#include <QStringList>

#include "core/files/catalogue.h"
#include "core/studies/family_properties.h"
#include "widgets/edit.h"

namespace jw {

/// What is compared, and from what.
struct FamilyQuestion {
  std::shared_ptr<const Project> project;
  FamilyRequest request;
  std::vector<OwnColumn> own;  ///< beside the rules
  bool invented = false;       ///< whether all of it comes from the bundled files
};

/// The same joint with each family of reducers, and how a person looks at it.
struct FamilyStudy {
  FamilyQuestion question;
  std::optional<FamilyChoice> present;  ///< the stage as it stands
  std::vector<FamilyChoice> choices;
  std::optional<InputError> refused;
  std::map<std::string, double> weights;  ///< by the property's key; none = 0
  std::string x = "mass";
  std::string y = "efficiency";

  bool byRules() const { return question.request.catalogue.empty(); }
};

/// Compares; on a stop `choices` is not complete and not to be shown.
FamilyStudy compareFamilies(const FamilyQuestion& question, const StudyRun& run);

/// By the bundled rules, for the stage of the largest ratio.
FamilyQuestion bundledFamilies(std::shared_ptr<const Project> project);

/// The family's reducer as one more variant, active: one step of the history.
Edit adoptFamilyEdit(const FamilyChoice& choice, int stage);

/// "Strain wave".
QString familyLabel(StageFamily family);

/// One family's sum of weights and shares, with what it is made of.
struct WeightedFamily {
  std::size_t choice = 0;
  double sum = 0;     ///< of weight x share of best over the weights: 0 to 1
  QStringList terms;  ///< "2 × 0.80 efficiency at the cycle"
  bool holds = true;  ///< false: a verdict of the joint is short with it
};

/// Whether no verdict of the joint is short or cannot be told with it.
bool canDoIt(const FamilyChoice& choice);

/// Those that can do it first, each by its sum; empty if no weight is above 0. Families of which a
/// weighed property is not known come without that term.
std::vector<WeightedFamily> weightedOrder(const FamilyStudy& study);

}  // namespace jw
