#include "widgets/figures/search_study.h"

#include <chrono>
#include <mutex>

#include <QCoreApplication>

#include "core/studies/ratio_sweep.h"

namespace jw {
namespace {

using Clock = std::chrono::steady_clock;
constexpr std::size_t kMostOnPaper = 1'000;
constexpr auto kBetweenNews = std::chrono::milliseconds(34);  // at most 30 a second

/// Gathers what the search's threads find until it is told.
class NewsDesk {
 public:
  explicit NewsDesk(const std::function<void(SearchNews)>& tell) : tell_(tell) {}

  void add(const Candidate& candidate) {
    const std::lock_guard lock(mutex_);
    waiting_.push_back(candidate);
  }

  void progress(const SearchProgress& counts) {
    if (Clock::now() - last_ < kBetweenNews) return;
    last_ = Clock::now();
    SearchNews news;
    news.counts = counts;
    send(std::move(news));
  }

  void send(SearchNews news) {
    {
      const std::lock_guard lock(mutex_);
      news.candidates = std::exchange(waiting_, {});
    }
    tell_(std::move(news));
  }

 private:
  const std::function<void(SearchNews)>& tell_;
  std::mutex mutex_;
  std::vector<Candidate> waiting_;
  Clock::time_point last_{};
};

}  // namespace

void runSearch(const SearchQuestion& question, const StudyRun& run,
               const std::function<void(SearchNews)>& tell) {
  NewsDesk desk(tell);
  SearchNews first;
  first.base = std::make_shared<const Evaluation>(evaluate(*question.project, run.stop));
  if (first.base->stopped) return;
  first.counts.total = question.space->size();
  desk.send(std::move(first));
  SearchRequest request;
  request.filters = question.filters;
  request.found = request.fellShort = [&](const Candidate& one) { desk.add(one); };
  request.progress = [&](const SearchProgress& counts) { desk.progress(counts); };
  request.mostEvaluated = question.mostEvaluated;
  auto result = searchCatalogue(*question.project, *question.space, request, run);
  SearchNews last;
  if (!result) {
    last.refused = result.error();
  } else {
    last.counts = result->counts;
    result->candidates.clear();  // told one by one
    last.result = std::move(*result);
  }
  desk.send(std::move(last));
}

void takeNews(SearchStudy& study, SearchNews news) {
  if (news.base) {
    study.base = news.base;
    study.present = designPoint(*news.base);
    study.presentProperties = propertiesOf(study.question.project->active());
  }
  study.candidates.insert(study.candidates.end(), std::make_move_iterator(news.candidates.begin()),
                          std::make_move_iterator(news.candidates.end()));
  study.done = news.result || news.refused;
  study.refused = news.refused;
  if (news.result) {
    study.result = std::move(*news.result);
  } else if (!news.refused) {
    study.result.counts = news.counts;
  }
}

tl::expected<SearchQuestion, InputError> bundledQuestion(std::shared_ptr<const Project> project) {
  const auto stage = leadingStage(*project);
  if (!stage) return tl::unexpected(stage.error());
  auto space = std::make_shared<SearchSpace>();
  space->motors = bundledCatalogue(CatalogueKind::Motors)->motors;
  space->reducers = bundledCatalogue(CatalogueKind::Reducers)->reducers;
  space->reducerStage = *stage;
  return SearchQuestion{std::move(project), std::move(space), {}, true};
}

SearchStudy bundledSearch(std::shared_ptr<const Project> project) {
  SearchStudy study;
  const auto question = bundledQuestion(project);
  if (!question) {
    study.question.project = std::move(project);
    study.refused = question.error();
    study.done = true;
    return study;
  }
  study.question = *question;
  study.question.mostEvaluated = kMostOnPaper;
  runSearch(study.question, {}, [&](SearchNews news) { takeNews(study, std::move(news)); });
  std::sort(
      study.candidates.begin(), study.candidates.end(), [](const Candidate& a, const Candidate& b) {
        return std::tie(a.which.motor, a.which.reducer) < std::tie(b.which.motor, b.which.reducer);
      });
  return study;
}

Edit adoptEdit(std::shared_ptr<const SearchSpace> space, const Combination& which) {
  const QString name = QString::fromStdString(combinationName(*space, which));
  return {QCoreApplication::translate("Search", "Adopt %1").arg(name),
          {},
          [space, which](Project& project) -> tl::expected<void, InputError> {
            const int stages = static_cast<int>(project.active().transmission.size());
            if (space->reducerStage >= stages || space->beltStage >= stages) {
              return tl::unexpected(InputError{"the stage that was searched for is no longer there",
                                               "transmission",
                                               "search again with the chain as it is now"});
            }
            auto adopted = adoptCombination(project, *space, which);
            if (!adopted) return tl::unexpected(adopted.error());
            project = std::move(*adopted);
            return {};
          }};
}

}  // namespace jw
