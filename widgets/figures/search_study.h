#pragma once

#include <functional>
#include <memory>

#include <QString>

#include "core/studies/catalogue_search.h"
#include "widgets/edit.h"
#include "widgets/panels/catalogue_files.h"

namespace jw {

/// What is searched for, and in what.
struct SearchQuestion {
  std::shared_ptr<const Project> project;
  std::shared_ptr<const SearchSpace> space;
  std::vector<CombinationFilter> filters;
  bool invented = false;          ///< whether all parts come from the bundled catalogues
  std::size_t mostEvaluated = 0;  ///< in full, the lightest; 0 = all that survive screening
};

/// A search as far as it has come, with the figures that its picture has on its axes.
struct SearchStudy {
  SearchQuestion question;
  std::shared_ptr<const Evaluation> base;  ///< of the design as it stands
  DesignPoint present;                     ///< likewise
  Properties presentProperties;
  std::vector<Candidate> candidates;  ///< found ones, and some that fell short, as they came
  SearchResult result;                ///< counts and reasons; its own candidates stay empty
  bool done = false;
  std::optional<InputError> refused;
  std::string x = "mass";
  std::string y = "margin";
};

/// What a running search has to tell; at most some 30 a second.
struct SearchNews {
  std::vector<Candidate> candidates;  ///< since the last one
  SearchProgress counts;
  std::shared_ptr<const Evaluation> base;  ///< in the first one
  std::optional<SearchResult> result;      ///< in the last one
  std::optional<InputError> refused;       ///< likewise, if it could not be searched
};

/// Searches; `tell` is called from this thread, first as soon as the present design is evaluated.
/// A stop takes effect within one evaluation of a design.
void runSearch(const SearchQuestion& question, const StudyRun& run,
               const std::function<void(SearchNews)>& tell);

/// Adds what is new.
void takeNews(SearchStudy& study, SearchNews news);

/// The project's motor and the reducer of its largest ratio from the bundled catalogues.
tl::expected<SearchQuestion, InputError> bundledQuestion(std::shared_ptr<const Project> project);

/// The search of the bundled catalogues, all of it here and now, for paper: of what survives
/// screening the lightest thousand.
SearchStudy bundledSearch(std::shared_ptr<const Project> project);

/// The combination as one more variant, active: one step of the history.
Edit adoptEdit(std::shared_ptr<const SearchSpace> space, const Combination& which);

}  // namespace jw
