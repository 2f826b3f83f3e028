#pragma once

#include <condition_variable>
#include <memory>
#include <mutex>
#include <optional>
#include <stop_token>
#include <thread>

#include <QObject>

#include "widgets/snapshot.h"

namespace jw {

/// Evaluates projects on a thread of its own. The latest request wins: one that waits is replaced,
/// one that runs is asked to stop, but never twice in a row, so that a stream of edits cannot keep
/// the answer away for ever.
class Evaluator : public QObject {
  Q_OBJECT

 public:
  explicit Evaluator(QObject* parent = nullptr);
  ~Evaluator() override;

  void request(std::shared_ptr<const Project> project, quint64 revision);

 signals:
  /// On the thread of this object, once for each evaluation that ran to its end, with the studies
  /// that the figures show (they take about as long as the evaluation).
  void evaluated(const jw::Snapshot& snapshot);
  /// The evaluation itself broke down: a fault of the program.
  void failed(const QString& message);

 private:
  struct Job {
    std::shared_ptr<const Project> project;
    quint64 revision = 0;
  };
  void work(const std::stop_token& quit);
  std::optional<Job> nextJob(const std::stop_token& quit);
  void run(const Job& job, const std::stop_token& stop);
  void deliver(Snapshot snapshot);

  std::mutex mutex_;
  std::condition_variable_any wake_;
  std::optional<Job> waiting_;
  std::stop_source running_{std::nostopstate};
  bool lastStopped_ = false;
  std::jthread thread_;  // last: it starts when all else is there and ends first
};

}  // namespace jw

Q_DECLARE_METATYPE(jw::Snapshot)
