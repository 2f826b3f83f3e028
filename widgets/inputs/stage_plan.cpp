#include "core/model/acceptance.h"
#include "widgets/inputs/field_text.h"
#include "widgets/inputs/list_edits.h"
#include "widgets/inputs/list_plan.h"
#include "widgets/inputs/new_items.h"

namespace jw {
namespace {

/// The edit, and then what keeps acceptances with their stage.
Edit followed(Edit edit, std::function<void(Variant&)> follow) {
  edit.apply = [change = std::move(edit.apply), follow = std::move(follow)](Project& project) {
    auto done = change(project);
    if (done) follow(project.active());
    return done;
  };
  return edit;
}

QString familyLabel(int family) {
  const FieldInfo* info = structInfo<Stage>().find("family");
  return toQString(info->choices[static_cast<std::size_t>(family)].label);
}

CardText stageText(const FieldGroup& fields, int index) {
  const auto& stage = *static_cast<const Stage*>(fields.owner());
  const QString family = familyLabel(static_cast<int>(stage.family));
  const QString ratio = isSet(stage.ratio) ? toQString(formatNumber(stage.ratio)) + " : 1"
                                           : QStringLiteral("ratio needed");
  const QString place = QStringLiteral("stage %1").arg(index + 1);
  if (stage.name.empty()) return {upperFirst(family), place + " · " + ratio};
  return {toQString(stage.name), place + " · " + family + " · " + ratio};
}

}  // namespace

ListPlan stagePlan() {
  const ListEdits<Stage> edits(
      [](Project& project) -> std::vector<Stage>& { return project.active().transmission; },
      "stage");
  ListPlan plan;
  plan.path = "transmission";
  plan.item = "stage";
  plan.items = "stages";
  plan.earlier = "toward the motor";
  plan.later = "toward the joint";
  plan.emptyText = "Direct drive: no stage";
  plan.info = &structInfo<Stage>();
  plan.kindKey = "family";
  plan.add = [edits](int kind) {
    return edits.append(newStage(static_cast<StageFamily>(kind)),
                        "Add " + familyLabel(kind) + " stage");
  };
  plan.duplicate = [edits](int index) {
    return followed(edits.duplicate(index),
                    [index](Variant& variant) { followInsertedStage(variant, index + 1); });
  };
  plan.remove = [edits](int index) {
    return followed(edits.remove(index),
                    [index](Variant& variant) { followRemovedStage(variant, index); });
  };
  plan.move = [edits](int from, int to) {
    return followed(edits.move(from, to),
                    [from, to](Variant& variant) { followSwappedStages(variant, from, to); });
  };
  plan.text = &stageText;
  plan.openText = "What can be built…";
  plan.opens = [](const FieldGroup& fields) {
    const StageFamily family = static_cast<const Stage*>(fields.owner())->family;
    return family != StageFamily::Coupling && family != StageFamily::GivenRatio;
  };
  return plan;
}

}  // namespace jw
