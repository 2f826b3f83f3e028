#include "core/files/catalogue.h"

#include "core/files/catalogue_rows.h"

namespace jw {
namespace {

/// The columns of one's own; the text has been read as rules before.
std::vector<OwnColumn> readOwn(std::string_view text) {
  CatalogueRows rows(text, {});
  if (rows.readTitles()) return {};
  std::vector<OwnColumn> own;
  std::vector<std::size_t> places;
  std::size_t familyColumn = 0;
  for (std::size_t k = 0; k < rows.titles().size(); ++k) {
    const auto& [label, unit] = rows.titles()[k];
    if (label == "family") familyColumn = k;
    if (!label.starts_with(kOwnPrefix)) continue;
    const std::string name = label.substr(kOwnPrefix.size());
    own.push_back({unit.empty() ? name : name + " [" + unit + "]", {}});
    places.push_back(k);
  }
  while (rows.next()) {
    for (const FamilyRule& rule : defaultFamilyRules()) {
      if (familyKey(rule.family) != rows.cell(familyColumn)) continue;
      for (std::size_t k = 0; k < own.size(); ++k) {
        own[k].cells.emplace_back(rule.family, rows.cell(places[k]));
      }
    }
  }
  return own;
}

template <class Entry>
tl::expected<void, InputError> take(tl::expected<ReadCatalogue<Entry>, InputError> read,
                                    std::vector<Entry>& entries, Catalogue& catalogue) {
  if (!read) return tl::unexpected(read.error());
  entries = std::move(read->entries);
  catalogue.notes = std::move(read->notes);
  return {};
}

tl::expected<void, InputError> takeRules(Catalogue& catalogue) {
  auto rules = readFamilyRules(catalogue.text, catalogue.name);
  if (!rules) return tl::unexpected(rules.error());
  catalogue.rules = std::move(*rules);
  catalogue.own = readOwn(catalogue.text);
  return {};
}

tl::expected<void, InputError> fill(Catalogue& catalogue) {
  const std::string& text = catalogue.text;
  switch (catalogue.kind) {
    case CatalogueKind::Motors:
      return take(readMotorCatalogue(text, catalogue.name), catalogue.motors, catalogue);
    case CatalogueKind::Reducers:
      return take(readReducerCatalogue(text, catalogue.name), catalogue.reducers, catalogue);
    case CatalogueKind::Rules: break;
  }
  return takeRules(catalogue);
}

}  // namespace

tl::expected<Catalogue, InputError> readCatalogue(CatalogueKind kind, std::string text,
                                                  std::string name) {
  Catalogue catalogue;
  catalogue.kind = kind;
  catalogue.name = std::move(name);
  catalogue.text = std::move(text);
  if (const auto done = fill(catalogue); !done) return tl::unexpected(done.error());
  return catalogue;
}

}  // namespace jw
