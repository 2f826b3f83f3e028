#include "app/fields_report.h"

#include <fmt/format.h>
#include <nlohmann/json.hpp>

#include "app/html_text.h"
#include "app/text_table.h"
#include "core/model/field_catalogue.h"

namespace jw {
namespace {

using Json = nlohmann::ordered_json;

/// A project with one of everything, so that its fields are all there are.
Project exemplar() {
  Project project;
  project.active().transmission.resize(1);
  project.active().accepted.resize(1);
  project.load.masses.resize(1);
  project.cycle.segments.resize(1);
  project.otherCycles.resize(1);
  project.otherCycles.front().segments.resize(1);
  return project;
}

std::string pattern(std::string path) {
  for (auto index = path.find("[0]"); index != std::string::npos; index = path.find("[0]"))
    path.replace(index, 3, "[N]");
  return path;
}

std::string_view kindName(FieldKind kind) {
  switch (kind) {
    case FieldKind::Number: return "number";
    case FieldKind::Integer: return "integer";
    case FieldKind::Flag: return "flag";
    case FieldKind::Choice: return "choice";
    case FieldKind::Text: break;
  }
  return "text";
}

std::string allowed(const FieldInfo& info) {
  if (info.kind == FieldKind::Flag) return "yes or no";
  if (info.kind == FieldKind::Text) return "text";
  if (info.kind != FieldKind::Choice) return describeRange(info);
  std::string keys;
  for (const ChoiceItem& item : info.choices) {
    keys += (keys.empty() ? "" : ", ") + std::string(item.key);
  }
  return keys;
}

Json fieldObject(const FieldRef& field) {
  const FieldInfo& info = *field.info;
  Json object{{"path", pattern(field.path)}, {"label", info.label}, {"symbol", info.symbol}};
  object["kind"] = kindName(info.kind);
  object["unit"] = info.kind == FieldKind::Number ? Json(info.unit) : Json(nullptr);
  object["allowed"] = allowed(info);
  Json& choices = object["choices"] = Json::array();
  for (const ChoiceItem& item : info.choices) {
    choices.push_back({{"key", item.key}, {"label", item.label}});
  }
  object["help"] = info.help;
  object["source"] = info.source;
  return object;
}

}  // namespace

std::string fieldsTable() {
  TextTable table("lll");
  const Project project = exemplar();
  for (const FieldRef& field : allFields(project)) {
    table.addRow({pattern(field.path), prettyUnit(field.info->unit),
                  fmt::format("{} Allowed: {}.", field.info->help, allowed(*field.info))});
  }
  return table.text();
}

std::string fieldsJson() {
  Json document{{"format", "jointwright fields"}, {"version", 1}};
  Json& fields = document["fields"] = Json::array();
  const Project project = exemplar();
  for (const FieldRef& field : allFields(project)) fields.push_back(fieldObject(field));
  return document.dump(2) + "\n";
}

std::string fieldsHtml() {
  std::string html;
  const StructInfo* station = nullptr;
  const Project project = exemplar();
  for (const FieldRef& field : allFields(project)) {
    if (field.structInfo != station) {
      if (station != nullptr) html += "</table>";
      station = field.structInfo;
      html += fmt::format("<h3>{}</h3><table cellspacing=\"0\" cellpadding=\"4\" width=\"100%\">",
                          htmlText(station->title));
    }
    html += fmt::format(
        "<tr><td width=\"22%\"><b>{}</b></td><td width=\"8%\">{}</td><td width=\"28%\">{}</td>"
        "<td>{}</td></tr>",
        htmlSymbol(field.info->label), htmlSymbol(field.info->symbol),
        htmlText(allowed(*field.info)), htmlSymbol(field.info->help));
  }
  return html + "</table>";
}

}  // namespace jw
