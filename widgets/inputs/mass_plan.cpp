#include "widgets/inputs/field_text.h"
#include "widgets/inputs/list_edits.h"
#include "widgets/inputs/list_plan.h"

namespace jw {
namespace {

CardText massText(const FieldGroup& fields, int index) {
  const auto& body = *static_cast<const LoadMass*>(fields.owner());
  const QString title =
      body.name.empty() ? QString("Mass %1").arg(index + 1) : toQString(body.name);
  if (!isSet(body.mass)) return {title, QStringLiteral("mass needed")};
  const auto length = [](double value) {
    return toQString(formatQuantity(value, Quantity::Length, "m"));
  };
  return {title, QString("%1 at x %2, y %3")
                     .arg(toQString(formatQuantity(body.mass, Quantity::Mass, "kg")),
                          length(body.x), length(body.y))};
}

}  // namespace

ListPlan massPlan() {
  const ListEdits<LoadMass> edits(
      [](Project& project) -> std::vector<LoadMass>& { return project.load.masses; }, "mass");
  ListPlan plan;
  plan.path = "load.masses";
  plan.item = "mass";
  plan.items = "masses";
  plan.earlier = "up";
  plan.later = "down";
  plan.emptyText = "No masses beside link and payload";
  plan.info = &structInfo<LoadMass>();
  plan.add = [edits](int) { return edits.append(LoadMass{}, "Add mass"); };
  plan.duplicate = [edits](int index) { return edits.duplicate(index); };
  plan.remove = [edits](int index) { return edits.remove(index); };
  plan.move = [edits](int from, int to) { return edits.move(from, to); };
  plan.text = &massText;
  return plan;
}

}  // namespace jw
