#include "widgets/study_thread.h"

#include <exception>
#include <utility>

#include <QMetaObject>

#include <sys/resource.h>

namespace jw {
namespace {

// On Linux this is the priority of the calling thread, and of those that it starts.
void giveWay() {
  constexpr int kNice = 10;
  setpriority(PRIO_PROCESS, 0, kNice);
}

}  // namespace

StudyThread::StudyThread(QObject* parent)
    : QObject(parent), m_thread([this](const std::stop_token& quit) { work(quit); }) {}

StudyThread::~StudyThread() {
  m_thread.request_stop();
  const std::lock_guard lock(m_mutex);
  m_running.request_stop();
}

void StudyThread::request(Study study) {
  {
    const std::lock_guard lock(m_mutex);
    m_waiting = Job{std::move(study), ++m_number};
    m_running.request_stop();
  }
  m_wake.notify_one();
  setBusy(true);
}

void StudyThread::stop() {
  {
    const std::lock_guard lock(m_mutex);
    ++m_number;
    m_waiting.reset();
    m_running.request_stop();
  }
  setBusy(false);
}

void StudyThread::work(const std::stop_token& quit) {
  giveWay();
  while (true) {
    std::unique_lock lock(m_mutex);
    m_wake.wait(lock, quit, [this] { return m_waiting.has_value(); });
    if (quit.stop_requested()) return;
    const Job job = *std::exchange(m_waiting, std::nullopt);
    m_running = std::stop_source();
    const std::stop_token stop = m_running.get_token();
    lock.unlock();
    run(job, stop);
  }
}

void StudyThread::run(const Job& job, const std::stop_token& stop) {
  try {
    job.study({stop, [this, number = job.number](std::function<void()> show) {
                 post(number, std::move(show));
               }});
  } catch (const std::exception& fault) {
    post(job.number, [this, message = QString::fromUtf8(fault.what())] { emit failed(message); });
  }
  post(job.number, [this] { setBusy(false); });
}

void StudyThread::post(quint64 number, std::function<void()> show) {
  QMetaObject::invokeMethod(
      this,
      [this, number, show = std::move(show)] {
        if (number == m_number) show();
      },
      Qt::QueuedConnection);
}

void StudyThread::setBusy(bool busy) {
  if (m_busy == busy) return;
  m_busy = busy;
  emit busyChanged(busy);
}

}  // namespace jw
