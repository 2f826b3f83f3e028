#include "widgets/panels/log_work.h"

#include <algorithm>
#include <utility>

#include <QMetaObject>

namespace jw {

LogWork::LogWork(QObject* parent)
    : QObject(parent), m_thread([this](const std::stop_token& quit) { work(quit); }) {}

LogWork::~LogWork() {
  m_thread.request_stop();
  const std::lock_guard lock(m_mutex);
  m_running.request_stop();
}

void LogWork::request(LogStage from, const LogSettings& settings) {
  m_settings = settings;
  m_open = std::min(m_open, from);
  ++m_revision;
  setBusy(true);
  post({m_open, settings, m_study, m_revision, false});
}

void LogWork::requestCycle(const LogSettings& settings) {
  if (!m_study.curves) return;
  // It takes the place of a job that waits or runs; what that left open is taken up afterwards.
  ++m_revision;
  setBusy(true);
  post({m_open, settings, m_study, m_revision, true});
}

void LogWork::stop() {
  {
    const std::lock_guard lock(m_mutex);
    m_waiting.reset();
    m_running.request_stop();
  }
  ++m_revision;
  m_open = LogStage::Done;
  setBusy(false);
}

void LogWork::post(Job job) {
  {
    const std::lock_guard lock(m_mutex);
    m_waiting = std::move(job);
    m_running.request_stop();
  }
  m_wake.notify_one();
}

void LogWork::work(const std::stop_token& quit) {
  while (true) {
    std::unique_lock lock(m_mutex);
    if (!m_wake.wait(lock, quit, [this] { return m_waiting.has_value(); })) return;
    Job job = *std::exchange(m_waiting, std::nullopt);
    m_running = std::stop_source();
    const std::stop_token stop = m_running.get_token();
    lock.unlock();
    job.cycle ? runCycle(job) : run(std::move(job), stop);
  }
}

void LogWork::run(Job job, const std::stop_token& stop) {
  const auto progress = [&](double share) {
    m_share = share;
    return !stop.stop_requested();
  };
  for (LogStage stage = job.from; stage != LogStage::Done; stage = LogStage(int(stage) + 1)) {
    m_stage = stage;
    m_share = 0;
    const auto done = advance(job.study, stage, job.settings, progress);
    if (stop.stop_requested()) return;
    QMetaObject::invokeMethod(
        this,
        [this, stage, study = job.study, revision = job.revision, done] {
          done ? receive(stage, study, revision)
               : receiveError(stage, study, done.error(), revision);
        },
        Qt::QueuedConnection);
    if (!done) return;
  }
}

void LogWork::runCycle(const Job& job) {
  auto cycle = std::make_shared<const LogJoinResult>(closedCycle(job.study, job.settings));
  QMetaObject::invokeMethod(
      this,
      [this, cycle = std::move(cycle), revision = job.revision] {
        if (revision == m_revision) {
          m_open == LogStage::Done ? setBusy(false) : request(m_open, m_settings);
        }
        emit cycleReady(cycle);
      },
      Qt::QueuedConnection);
}

void LogWork::receive(LogStage stage, const LogStudy& study, quint64 revision) {
  if (revision != m_revision) return;
  m_study = study;
  m_open = LogStage(int(stage) + 1);
  emit advanced(stage);
  if (m_open == LogStage::Done && revision == m_revision) setBusy(false);
}

void LogWork::receiveError(LogStage stage, const LogStudy& study, const InputError& error,
                           quint64 revision) {
  if (revision != m_revision) return;
  m_study = study;
  m_open = LogStage::Done;
  setBusy(false);
  emit failed(stage, error);
}

void LogWork::setBusy(bool busy) {
  if (m_busy == busy) return;
  m_busy = busy;
  emit busyChanged(busy);
}

}  // namespace jw
