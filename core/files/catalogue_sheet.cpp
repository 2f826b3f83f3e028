#include "core/files/catalogue_sheet.h"

#include <algorithm>

#include <fmt/format.h>

#include "core/files/catalogue_rows.h"

namespace jw {
namespace {

bool isWrong(const SheetRow& row) { return !row.wrong.empty(); }

const StructInfo& structureOf(CatalogueKind kind) {
  return kind == CatalogueKind::Motors ? structInfo<Motor>() : structInfo<Stage>();
}

SheetColumn nameColumn() { return {"name", {}, "Name", nullptr, nullptr}; }
SheetColumn familyColumn() { return {"family", {}, "Family", nullptr, nullptr}; }

SheetColumn columnOf(const FieldInfo& info, std::string unit) {
  return {std::string(info.key), std::move(unit), std::string(info.label), &info, nullptr};
}

SheetColumn columnOf(const RuleField& field, std::string unit) {
  return {std::string(field.key), std::move(unit), std::string(field.label), nullptr, &field};
}

/// The column of a title that the readers have accepted.
SheetColumn columnOf(CatalogueKind kind, const CatalogueTitle& title) {
  const std::string label = table_text::smallLetters(title.label);
  if (kind == CatalogueKind::Rules) {
    if (label == "family") return familyColumn();
    for (const RuleField& field : ruleFields()) {
      if (field.key == title.label) {
        return columnOf(field, title.unit.empty() ? std::string(field.unit) : title.unit);
      }
    }
  } else {
    if (label == "name") return nameColumn();
    for (const FieldInfo& info : structureOf(kind).fields) {
      if (table_text::smallLetters(info.key) != label &&
          table_text::smallLetters(info.label) != label) {
        continue;
      }
      return columnOf(info, title.unit.empty() ? std::string(info.unit) : title.unit);
    }
  }
  const bool own = title.label.starts_with(kOwnPrefix);
  return {title.label, title.unit, own ? title.label.substr(kOwnPrefix.size()) : title.label,
          nullptr, nullptr};
}

/// The notes above the titles.
std::string remarkOf(std::string_view text) {
  table_text::LineReader lines(text);
  std::string remark;
  while (lines.nextOrNote() && lines.line().starts_with('#')) {
    std::string_view line = lines.line().substr(1);
    if (line.starts_with(' ')) line.remove_prefix(1);
    if (!remark.empty()) remark += '\n';
    remark += line;
  }
  return remark;
}

std::string quotedCell(std::string_view text) {
  return text.find_first_of(",;\t\"") == text.npos ? std::string(text)
                                                   : fmt::format("\"{}\"", text);
}

std::string remedied(const InputError& error) {
  return error.remedy.empty() ? error.what : error.what + "; " + error.remedy;
}

std::string wrongNumber(std::string_view text, Quantity quantity, std::string_view unit,
                        double low) {
  const auto value = parseQuantity(text, quantity, unit);
  if (!value) return remedied(value.error());
  if (value->value >= low) return {};
  return "this is below what is allowed; at least " + formatQuantity(low, quantity, unit);
}

std::string wrongField(const FieldInfo& info, const std::string& unit, std::string_view text) {
  std::string whole(text);
  if (info.kind == FieldKind::Number && !unit.empty() && unit != "1") {
    const auto parsed = parseQuantity(text, info.quantity, unit);
    if (parsed && parsed->unit.empty()) whole += " " + unit;
  }
  const auto value = readField(info, whole);
  return value ? std::string() : remedied(value.error());
}

std::string wrongFamily(std::string_view text) {
  std::string known;
  for (const FamilyRule& rule : defaultFamilyRules()) {
    if (familyKey(rule.family) == text) return {};
    known += (known.empty() ? "" : ", ") + std::string(familyKey(rule.family));
  }
  return "no family with a rule; one of " + known;
}

}  // namespace

std::string SheetColumn::title() const {
  return unit.empty() || unit == "1" ? key : fmt::format("{} [{}]", key, unit);
}

void CatalogueSheet::insert(std::size_t at, SheetRowPtr row) {
  wrongRows += isWrong(*row) ? 1 : 0;
  rows.insert(rows.begin() + static_cast<std::ptrdiff_t>(at), std::move(row));
}

void CatalogueSheet::remove(std::size_t at) {
  wrongRows -= isWrong(*rows[at]) ? 1 : 0;
  rows.erase(rows.begin() + static_cast<std::ptrdiff_t>(at));
}

void CatalogueSheet::replace(std::size_t at, SheetRowPtr row) {
  wrongRows += (isWrong(*row) ? 1 : 0);
  wrongRows -= (isWrong(*rows[at]) ? 1 : 0);
  rows[at] = std::move(row);
}

tl::expected<CatalogueSheet, InputError> readSheet(CatalogueKind kind, std::string_view text,
                                                   std::string_view name) {
  const auto whole = readCatalogue(kind, std::string(text), std::string(name));
  if (!whole) return tl::unexpected(whole.error());
  CatalogueRows in(text, name);
  if (const auto error = in.readTitles()) return tl::unexpected(*error);
  CatalogueSheet sheet{kind, remarkOf(text), {}, {}, 0};
  for (const CatalogueTitle& title : in.titles()) sheet.columns.push_back(columnOf(kind, title));
  while (in.next()) {
    auto row = std::make_shared<SheetRow>();  // right as a whole: the catalogue could be read
    for (std::size_t k = 0; k < sheet.columns.size(); ++k) row->cells.emplace_back(in.cell(k));
    sheet.rows.push_back(std::move(row));
  }
  return sheet;
}

std::string writeSheet(const CatalogueSheet& sheet) {
  std::string text;
  for (std::string_view rest = sheet.remark; !rest.empty();) {
    const auto end = std::min(rest.find('\n'), rest.size());
    text += "# " + std::string(rest.substr(0, end)) + "\n";
    rest.remove_prefix(std::min(end + 1, rest.size()));
  }
  for (std::size_t k = 0; k < sheet.columns.size(); ++k) {
    text += (k > 0 ? "," : "") + quotedCell(sheet.columns[k].title());
  }
  text += "\n";
  for (const SheetRowPtr& row : sheet.rows) {
    for (std::size_t k = 0; k < row->cells.size(); ++k) {
      text += (k > 0 ? "," : "") + quotedCell(row->cells[k]);
    }
    text += "\n";
  }
  return text;
}

std::string wrongWith(const SheetColumn& column, std::string_view text) {
  const std::string_view cell = table_text::trimmed(text);
  if (cell.find('"') != cell.npos || cell.find('\n') != cell.npos) {
    return "quotation marks and line ends cannot stand in a cell; leave them out";
  }
  if (cell.starts_with('#')) return "a row must not begin with '#'; leave it out";
  if (column.key == "name" && cell.empty()) return "the name is missing; give every row a name";
  if (column.key == "family" && cell.empty()) return "the family is missing; such as planetary";
  if (column.key == "family" && column.field == nullptr) return wrongFamily(cell);
  if (cell.empty()) return {};
  if (column.field != nullptr && column.field->kind != FieldKind::Text) {
    return wrongField(*column.field, column.unit, cell);
  }
  if (column.ruleField == nullptr) return {};
  return wrongNumber(cell, column.ruleField->quantity, column.unit, column.ruleField->low);
}

SheetRowPtr makeRow(const CatalogueSheet& sheet, std::vector<std::string> cells) {
  auto row = std::make_shared<SheetRow>();
  cells.resize(sheet.columns.size());
  row->cells = std::move(cells);
  std::vector<std::string> wrong(row->cells.size());
  for (std::size_t k = 0; k < wrong.size(); ++k) {
    wrong[k] = wrongWith(sheet.columns[k], row->cells[k]);
  }
  const auto said = [](const std::string& text) { return !text.empty(); };
  if (std::any_of(wrong.begin(), wrong.end(), said)) row->wrong = std::move(wrong);
  return row;
}

SheetRowPtr withCell(const CatalogueSheet& sheet, const SheetRow& row, std::size_t column,
                     std::string text) {
  std::vector<std::string> cells = row.cells;
  cells[column] = std::string(table_text::trimmed(text));
  return makeRow(sheet, std::move(cells));
}

std::vector<SheetColumn> furtherColumns(const CatalogueSheet& sheet) {
  std::vector<SheetColumn> further;
  const auto offer = [&](SheetColumn column) {
    const auto same = [&](const SheetColumn& other) { return other.key == column.key; };
    if (std::none_of(sheet.columns.begin(), sheet.columns.end(), same)) {
      further.push_back(std::move(column));
    }
  };
  if (sheet.kind == CatalogueKind::Rules) {
    for (const RuleField& field : ruleFields()) offer(columnOf(field, std::string(field.unit)));
    return further;
  }
  for (const FieldInfo& info : structureOf(sheet.kind).fields) {
    const bool number = info.kind == FieldKind::Number;
    offer(columnOf(info, number ? std::string(info.unit) : std::string()));
  }
  return further;
}

void addColumn(CatalogueSheet& sheet, SheetColumn column) {
  sheet.columns.push_back(std::move(column));
  for (SheetRowPtr& row : sheet.rows) {
    auto longer = std::make_shared<SheetRow>(*row);
    longer->cells.emplace_back();
    if (!longer->wrong.empty()) longer->wrong.emplace_back();
    row = std::move(longer);
  }
}

}  // namespace jw
