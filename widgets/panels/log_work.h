#pragma once

#include <atomic>
#include <condition_variable>
#include <mutex>
#include <optional>
#include <stop_token>
#include <thread>

#include <QObject>

#include "widgets/panels/log_study.h"

namespace jw {

/// Works a log out on a thread of its own, stage by stage. The latest request wins; what an older
/// one had finished of the stages before stays.
class LogWork : public QObject {
  Q_OBJECT

 public:
  explicit LogWork(QObject* parent = nullptr);
  ~LogWork() override;

  /// Works out `from` and all that follows from it, with these settings.
  void request(LogStage from, const LogSettings& settings);
  /// Gives up what is going on; the study keeps what is finished.
  void stop();
  /// The chosen stretch with all its rows, worked out beside the window; answered by cycleReady.
  void requestCycle(const LogSettings& settings);

  const LogStudy& study() const { return m_study; }
  bool isBusy() const { return m_busy; }
  LogStage stage() const { return m_stage; }
  double share() const { return m_share; }  ///< of the stage, 0 to 1

 signals:
  void busyChanged(bool busy);
  void advanced(jw::LogStage stage);  ///< study() has this stage now
  void failed(jw::LogStage stage, const jw::InputError& error);
  void cycleReady(const std::shared_ptr<const jw::LogJoinResult>& cycle);

 private:
  struct Job {
    LogStage from = LogStage::Text;
    LogSettings settings;
    LogStudy study;
    quint64 revision = 0;
    bool cycle = false;
  };
  void post(Job job);
  void work(const std::stop_token& quit);
  void run(Job job, const std::stop_token& stop);
  void runCycle(const Job& job);
  void receive(LogStage stage, const LogStudy& study, quint64 revision);
  void receiveError(LogStage stage, const LogStudy& study, const InputError& error,
                    quint64 revision);
  void setBusy(bool busy);

  LogStudy m_study;
  LogSettings m_settings;
  LogStage m_open = LogStage::Done;  ///< the first stage that is still to be worked out
  quint64 m_revision = 0;
  bool m_busy = false;
  std::atomic<LogStage> m_stage{LogStage::Text};
  std::atomic<double> m_share{0};
  std::mutex m_mutex;
  std::condition_variable_any m_wake;
  std::optional<Job> m_waiting;
  std::stop_source m_running{std::nostopstate};
  std::jthread m_thread;  // last: it starts when all else is there and ends first
};

}  // namespace jw
