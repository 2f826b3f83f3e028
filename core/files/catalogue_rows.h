#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "core/files/table_text.h"
#include "core/model/field_catalogue.h"

namespace jw {

/// One column's title: "rotorInertia [kg*cm^2]".
struct CatalogueTitle {
  std::string label;  ///< "rotorInertia"
  std::string unit;   ///< "kg*cm^2"; empty if none is given
};

/// Goes through the rows of a catalogue's text, cell by cell, with places for messages.
class CatalogueRows {
 public:
  CatalogueRows(std::string_view text, std::string_view file);

  /// Reads the titles; an error if there are none or two are the same.
  std::optional<InputError> readTitles();
  const std::vector<CatalogueTitle>& titles() const { return titles_; }

  /// Whether there is a further row. A row with more cells than titles fails.
  bool next();
  const std::optional<InputError>& error() const { return error_; }
  /// The cell under a title; empty where the row is shorter.
  std::string_view cell(std::size_t column) const;

  /// An error at a cell of this row, or at the title if no row was read.
  InputError at(std::size_t column, std::string what, std::string remedy) const;
  /// An error of the whole text.
  InputError whole(std::string what, std::string remedy) const;

 private:
  table_text::LineReader lines_;
  std::string file_;
  char delimiter_ = ',';
  std::vector<CatalogueTitle> titles_;
  table_text::Cells cells_;
  std::optional<InputError> error_;
};

}  // namespace jw
