#pragma once

#include <memory>
#include <string>
#include <string_view>
#include <vector>

#include <tl/expected.hpp>

#include "core/files/catalogue.h"
#include "core/model/field_catalogue.h"

namespace jw {

/// One column of a catalogue as a table of texts.
struct SheetColumn {
  std::string key;                       ///< "rotorInertia", "name", "own:price"
  std::string unit;                      ///< of bare numbers; empty or "1" = none
  std::string label;                     ///< for people: "Rotor inertia"
  const FieldInfo* field = nullptr;      ///< of motors and reducers
  const RuleField* ruleField = nullptr;  ///< of rules

  /// "rotorInertia [kg*cm^2]", as it stands in a file.
  std::string title() const;
};

/// One row: texts as typed and what is wrong with them. Rows never change; an edit makes a new one.
struct SheetRow {
  std::vector<std::string> cells;
  std::vector<std::string> wrong;  ///< for each cell what is wrong and what is right; empty = none
};
using SheetRowPtr = std::shared_ptr<const SheetRow>;

/// A catalogue as a person edits it. Copies share their rows.
struct CatalogueSheet {
  CatalogueKind kind = CatalogueKind::Motors;
  std::string remark;  ///< the notes above the titles, without '#'
  std::vector<SheetColumn> columns;
  std::vector<SheetRowPtr> rows;
  std::size_t wrongRows = 0;

  void insert(std::size_t at, SheetRowPtr row);
  void remove(std::size_t at);
  void replace(std::size_t at, SheetRowPtr row);
};

/// The sheet of a text; errors as readCatalogue.
tl::expected<CatalogueSheet, InputError> readSheet(CatalogueKind kind, std::string_view text,
                                                   std::string_view name);

/// The file's text. What is wrong is written as it stands.
std::string writeSheet(const CatalogueSheet& sheet);

/// A row of these cells, checked.
SheetRowPtr makeRow(const CatalogueSheet& sheet, std::vector<std::string> cells);

/// The row with one cell changed, that cell checked.
SheetRowPtr withCell(const CatalogueSheet& sheet, const SheetRow& row, std::size_t column,
                     std::string text);

/// What is wrong with a text in a column and what would be right; empty if nothing is.
std::string wrongWith(const SheetColumn& column, std::string_view text);

/// The columns that could be added: fields that the sheet does not have yet.
std::vector<SheetColumn> furtherColumns(const CatalogueSheet& sheet);

/// Adds a column with empty cells at the end.
void addColumn(CatalogueSheet& sheet, SheetColumn column);

}  // namespace jw
