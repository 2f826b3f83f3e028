#include "core/studies/study_run.h"

#include <algorithm>
#include <atomic>
#include <chrono>
#include <condition_variable>
#include <mutex>
#include <thread>
#include <vector>

namespace jw {
namespace {

using Clock = std::chrono::steady_clock;

/// Hands out the indices and counts what is done.
class SharedWork {
 public:
  SharedWork(std::size_t count, std::stop_token stop, const std::function<void(std::size_t)>& body)
      : count_(count), stop_(std::move(stop)), body_(body) {}

  void work() {
    while (!stop_.stop_requested()) {
      const std::size_t at = next_.fetch_add(1);
      if (at >= count_) break;
      body_(at);
      done_.fetch_add(1);
    }
    const std::lock_guard lock(mutex_);
    ++through_;
    changed_.notify_one();
  }

  /// Waits for all workers or for the time to report; true when all are through.
  bool wait(std::size_t workers) {
    std::unique_lock lock(mutex_);
    return changed_.wait_for(lock, std::chrono::milliseconds(30),
                             [&] { return through_ == workers; });
  }

  std::size_t done() const { return done_.load(); }

 private:
  const std::size_t count_;
  const std::stop_token stop_;
  const std::function<void(std::size_t)>& body_;
  std::atomic<std::size_t> next_{0};
  std::atomic<std::size_t> done_{0};
  std::mutex mutex_;
  std::condition_variable changed_;
  std::size_t through_ = 0;
};

StudyProgress progressOf(std::size_t done, std::size_t total, Clock::time_point start) {
  StudyProgress progress{done, total, kUnset};
  if (done == 0) return progress;
  const std::chrono::duration<double> taken = Clock::now() - start;
  progress.secondsLeft =
      taken.count() * static_cast<double>(total - done) / static_cast<double>(done);
  return progress;
}

}  // namespace

bool forEachPoint(std::size_t count, const StudyRun& run,
                  const std::function<void(std::size_t)>& body) {
  const auto start = Clock::now();
  const std::size_t cores = std::max(1U, std::thread::hardware_concurrency());
  const std::size_t workers = std::min(count, run.threads > 0 ? run.threads : cores);
  SharedWork shared(count, run.stop, body);
  {
    std::vector<std::jthread> threads;
    for (std::size_t k = 0; k < workers; ++k) threads.emplace_back([&] { shared.work(); });
    while (!shared.wait(workers)) {
      if (run.progress) run.progress(progressOf(shared.done(), count, start));
    }
  }
  if (run.progress) run.progress(progressOf(shared.done(), count, start));
  return shared.done() == count;
}

}  // namespace jw
