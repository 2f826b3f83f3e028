// Text -> catalogue.
#include <algorithm>
#include <cmath>

#include <fmt/format.h>

#include "core/files/catalogue_rows.h"
#include "core/files/catalogue_table.h"

namespace jw {
namespace {

using table_text::quoted;
using table_text::smallLetters;

/// What a column is read into.
struct Use {
  const FieldInfo* info = nullptr;  ///< null for the name, and for what is passed over
  bool isName = false;
};

const FieldInfo* fieldNamed(const StructInfo& structure, std::string_view label) {
  if (const FieldInfo* info = structure.find(label)) return info;
  const std::string wanted = smallLetters(label);
  for (const FieldInfo& info : structure.fields) {
    if (smallLetters(info.label) == wanted || smallLetters(info.key) == wanted) return &info;
  }
  return nullptr;
}

/// The cell with its column's unit, unless it names one of its own.
std::string withUnit(const FieldInfo& info, const std::string& text, const std::string& unit) {
  if (unit.empty() || unit == "1") return text;
  const auto parsed = parseQuantity(text, info.quantity, unit);
  return parsed && !parsed->unit.empty() ? text : text + " " + unit;
}

/// Reads rows into structs of one kind.
class CatalogueReader {
 public:
  CatalogueReader(std::string_view text, std::string_view file, const StructInfo& structure)
      : rows_(text, file), structure_(structure) {}

  /// The titles; an error if one of `needed` is not among them.
  std::optional<InputError> readTitles(std::initializer_list<std::string_view> needed) {
    if (auto error = rows_.readTitles()) return error;
    for (std::size_t k = 0; k < rows_.titles().size(); ++k) {
      if (auto error = readTitle(k)) return error;
    }
    for (const std::string_view key : needed) {
      if (has(key)) continue;
      return rows_.whole(fmt::format("there is no column '{}'", key),
                         fmt::format("name a column '{}' in the first line", key));
    }
    return std::nullopt;
  }

  bool next() { return rows_.next(); }
  const std::optional<InputError>& rowError() const { return rows_.error(); }

  /// Reads the row into `owner`; `name` gets the name.
  std::optional<InputError> readRow(void* owner, AsWritten& asWritten, std::string& name) {
    for (std::size_t k = 0; k < uses_.size(); ++k) {
      const std::string_view cell = rows_.cell(k);
      if (uses_[k].isName && cell.empty()) {
        return rows_.at(k, "the name is missing", "give every row a name");
      }
      if (uses_[k].isName) name = std::string(cell);
      if (uses_[k].info == nullptr || cell.empty()) continue;
      if (auto error = readCell(k, cell, owner, asWritten)) return error;
    }
    return std::nullopt;
  }

  InputError whole(std::string what, std::string remedy) const {
    return rows_.whole(std::move(what), std::move(remedy));
  }
  std::vector<InputError> takeNotes() { return std::move(notes_); }

 private:
  std::optional<InputError> readTitle(std::size_t column) {
    const CatalogueTitle& title = rows_.titles()[column];
    Use& use = uses_.emplace_back();
    use.isName = smallLetters(title.label) == "name";
    if (use.isName || title.label == "origin") return std::nullopt;
    use.info = fieldNamed(structure_, title.label);
    if (use.info == nullptr) {
      notes_.push_back(rows_.at(column, "this column is not known",
                                "it is passed over; 'jointwright fields' lists all names"));
      return std::nullopt;
    }
    if (title.unit.empty() || isUnitOf(title.unit, use.info->quantity)) return std::nullopt;
    const QuantityInfo& quantity = quantityInfo(use.info->quantity);
    return rows_.at(column, fmt::format("{} is no unit of {}", quoted(title.unit), quantity.name),
                    fmt::format("use one such as {}", use.info->unit));
  }

  bool has(std::string_view key) const {
    return std::any_of(uses_.begin(), uses_.end(), [&](const Use& use) {
      return use.isName ? key == "name" : use.info != nullptr && use.info->key == key;
    });
  }

  std::optional<InputError> readCell(std::size_t column, std::string_view cell, void* owner,
                                     AsWritten& asWritten) {
    const FieldInfo& info = *uses_[column].info;
    std::string text(cell);
    if (info.kind == FieldKind::Text) {
      info.setText(owner, std::move(text));
      return std::nullopt;
    }
    if (info.kind == FieldKind::Number) text = withUnit(info, text, rows_.titles()[column].unit);
    const auto value = readField(info, text);
    if (!value) return rows_.at(column, value.error().what, value.error().remedy);
    info.setNumber(owner, *value);
    rememberTyped(asWritten, info, *value, text);
    return std::nullopt;
  }

  CatalogueRows rows_;
  const StructInfo& structure_;
  std::vector<Use> uses_;
  std::vector<InputError> notes_;
};

/// The entry of that name, of a file without its folders.
CataloguePart partOf(const std::string& name, std::string_view file) {
  const auto folder = file.find_last_of("/\\");
  return {name, std::string(folder == file.npos ? file : file.substr(folder + 1)), {}};
}

/// Rows into entries; `read` reads one row into an entry.
template <class Entry, class Read>
tl::expected<ReadCatalogue<Entry>, InputError> readAll(CatalogueReader& in, const Read& read) {
  ReadCatalogue<Entry> all;
  while (in.next()) {
    if (all.entries.size() == kMostCatalogueRows) {
      return tl::unexpected(in.whole("there are too many rows",
                                     fmt::format("at most {} are read", kMostCatalogueRows)));
    }
    if (auto error = read(all.entries.emplace_back())) return tl::unexpected(*error);
  }
  if (in.rowError()) return tl::unexpected(*in.rowError());
  if (all.entries.empty()) {
    return tl::unexpected(in.whole("there is no row below the titles", "give a row for each part"));
  }
  all.notes = in.takeNotes();
  return all;
}

}  // namespace

tl::expected<ReadCatalogue<MotorEntry>, InputError> readMotorCatalogue(std::string_view text,
                                                                       std::string_view file) {
  CatalogueReader in(text, file, structInfo<Motor>());
  if (const auto error = in.readTitles({"name"})) return tl::unexpected(*error);
  return readAll<MotorEntry>(in, [&](MotorEntry& entry) {
    auto error = in.readRow(&entry.motor, entry.motor.asWritten, entry.name);
    entry.motor.asWritten.from = partOf(entry.name, file);
    return error;
  });
}

tl::expected<ReadCatalogue<Stage>, InputError> readReducerCatalogue(std::string_view text,
                                                                    std::string_view file) {
  CatalogueReader in(text, file, structInfo<Stage>());
  if (const auto error = in.readTitles({"name", "family"})) return tl::unexpected(*error);
  return readAll<Stage>(in, [&](Stage& stage) {
    auto error = in.readRow(&stage, stage.asWritten, stage.name);
    stage.asWritten.from = partOf(stage.name, file);
    return error;
  });
}

namespace {

const RuleField* ruleField(std::string_view key) {
  for (const RuleField& field : ruleFields()) {
    if (field.key == key) return &field;
  }
  return nullptr;
}

std::optional<InputError> readRuleCell(const CatalogueRows& rows, std::size_t column,
                                       const RuleField& field, FamilyRule& rule) {
  const std::string& unit = rows.titles()[column].unit;
  const auto value =
      parseQuantity(rows.cell(column), field.quantity, unit.empty() ? field.unit : unit);
  if (!value) return rows.at(column, value.error().what, value.error().remedy);
  if (value->value < field.low) {
    return rows.at(
        column, "this is below what is allowed",
        fmt::format("at least {}", formatQuantity(field.low, field.quantity, field.unit)));
  }
  rule.*field.value = value->value;
  return std::nullopt;
}

std::optional<InputError> readRule(const CatalogueRows& rows, std::vector<FamilyRule>& rules) {
  std::size_t familyColumn = 0;
  while (rows.titles()[familyColumn].label != "family") ++familyColumn;
  const std::string_view key = rows.cell(familyColumn);
  const auto rule = std::find_if(rules.begin(), rules.end(),
                                 [&](const FamilyRule& r) { return familyKey(r.family) == key; });
  if (rule == rules.end()) {
    std::string known;
    for (const FamilyRule& r : rules)
      known += (known.empty() ? "" : ", ") + std::string(familyKey(r.family));
    return rows.at(familyColumn, quoted(key) + " is no family with a rule", "one of " + known);
  }
  for (std::size_t k = 0; k < rows.titles().size(); ++k) {
    const RuleField* field = ruleField(rows.titles()[k].label);
    if (field == nullptr || rows.cell(k).empty()) continue;
    if (auto error = readRuleCell(rows, k, *field, *rule)) return error;
  }
  if (rule->ratioHigh > rule->ratioLow) return std::nullopt;
  return rows.at(familyColumn, "the largest ratio is not above the least", "raise ratioHigh");
}

/// The titles of a table of rules.
std::optional<InputError> badRuleTitle(const CatalogueRows& rows) {
  bool hasFamily = false;
  for (std::size_t k = 0; k < rows.titles().size(); ++k) {
    const auto& [label, unit] = rows.titles()[k];
    hasFamily = hasFamily || label == "family";
    if (label == "family" || label == "origin" || label.starts_with("own:")) continue;
    const RuleField* field = ruleField(label);
    if (field == nullptr) {
      return rows.at(k, "no rule has such a number", "see the bundled rules for all");
    }
    if (unit.empty() || isUnitOf(unit, field->quantity)) continue;
    return rows.at(k, fmt::format("{} is no unit of this number", quoted(unit)),
                   fmt::format("use one such as {}", field->unit));
  }
  if (hasFamily) return std::nullopt;
  return rows.whole("there is no column 'family'", "add it, with names such as planetary");
}

}  // namespace

tl::expected<std::vector<FamilyRule>, InputError> readFamilyRules(std::string_view text,
                                                                  std::string_view file) {
  CatalogueRows rows(text, file);
  if (const auto error = rows.readTitles()) return tl::unexpected(*error);
  if (const auto error = badRuleTitle(rows)) return tl::unexpected(*error);
  std::vector<FamilyRule> rules = defaultFamilyRules();
  while (rows.next()) {
    if (const auto error = readRule(rows, rules)) return tl::unexpected(*error);
  }
  if (rows.error()) return tl::unexpected(*rows.error());
  return rules;
}

}  // namespace jw
