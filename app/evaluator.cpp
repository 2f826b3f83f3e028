#include "app/evaluator.h"

#include <exception>
#include <utility>

#include <QElapsedTimer>
#include <QMetaObject>

namespace jw {

Evaluator::Evaluator(QObject* parent)
    : QObject(parent), thread_([this](const std::stop_token& quit) { work(quit); }) {}

Evaluator::~Evaluator() {
  thread_.request_stop();
  const std::lock_guard lock(mutex_);
  running_.request_stop();
}

void Evaluator::request(std::shared_ptr<const Project> project, quint64 revision) {
  {
    const std::lock_guard lock(mutex_);
    waiting_ = Job{std::move(project), revision};
    if (!lastStopped_) running_.request_stop();
  }
  wake_.notify_one();
}

void Evaluator::work(const std::stop_token& quit) {
  while (const auto job = nextJob(quit)) {
    run(*job, running_.get_token());
  }
}

std::optional<Evaluator::Job> Evaluator::nextJob(const std::stop_token& quit) {
  std::unique_lock lock(mutex_);
  lastStopped_ = running_.stop_possible() && running_.stop_requested();
  if (!wake_.wait(lock, quit, [this] { return waiting_.has_value(); })) return std::nullopt;
  const auto job = std::exchange(waiting_, std::nullopt);
  running_ = std::stop_source();
  return job;
}

void Evaluator::run(const Job& job, const std::stop_token& stop) {
  QElapsedTimer timer;
  timer.start();
  try {
    Snapshot snapshot;
    auto evaluation = std::make_shared<Evaluation>(evaluate(*job.project, stop));
    if (evaluation->stopped) return;
    snapshot.project = snapshot.evaluatedProject = job.project;
    snapshot.evaluation = std::move(evaluation);
    snapshot.revision = job.revision;
    snapshot.evaluationSeconds = static_cast<double>(timer.nsecsElapsed()) * 1e-9;
    snapshot.studies = std::make_shared<const PlotStudies>(
        plotStudies(*snapshot.project, *snapshot.evaluation, stop));
    deliver(std::move(snapshot));
  } catch (const std::exception& fault) {
    const QString message = QString::fromUtf8(fault.what());
    QMetaObject::invokeMethod(
        this, [this, message] { emit failed(message); }, Qt::QueuedConnection);
  }
}

void Evaluator::deliver(Snapshot snapshot) {
  QMetaObject::invokeMethod(
      this, [this, snapshot = std::move(snapshot)] { emit evaluated(snapshot); },
      Qt::QueuedConnection);
}

}  // namespace jw
