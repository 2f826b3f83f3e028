#pragma once

#include <optional>
#include <string>
#include <vector>

#include "core/studies/catalogue_search.h"

namespace jw {

/// What `jointwright search` found, in the order in which it is listed.
struct SearchReport {
  const SearchSpace& space;
  const SearchResult& result;
  const Evaluation& base;          ///< of the project as it is, for titles
  std::vector<std::size_t> order;  ///< indices into result.candidates
  std::string sortedBy;            ///< name of the figure
};

/// A row for each candidate; `jointwright search --help` documents the form.
std::string searchCsv(const SearchReport& report);

/// The first rows and the counts, for people.
std::string searchText(const SearchReport& report);

/// Every verdict of a combination that is short, with its working; or that all hold.
std::string explanationText(const Project& combined, const std::string& name);

}  // namespace jw
