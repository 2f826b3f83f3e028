#pragma once

#include <condition_variable>
#include <functional>
#include <mutex>
#include <optional>
#include <stop_token>
#include <thread>

#include <QObject>

namespace jw {

/// What a study that runs beside the window may do.
struct StudyContext {
  std::stop_token stop;
  /// Has `show` run on the thread of the window, in order, unless the study has been replaced or
  /// stopped by then. May be called from any thread, while the study runs.
  std::function<void(std::function<void()> show)> post;
};

/// Runs one study at a time on a thread of its own, which gives way to the window and to the
/// evaluation (lower priority, for the threads that the study starts too). The latest request wins:
/// what runs is asked to stop, what waits is replaced.
class StudyThread : public QObject {
  Q_OBJECT

 public:
  using Study = std::function<void(const StudyContext&)>;

  explicit StudyThread(QObject* parent = nullptr);
  ~StudyThread() override;

  void request(Study study);
  /// Gives up what runs and what waits; nothing of it is shown any more.
  void stop();
  bool isBusy() const { return m_busy; }

 signals:
  void busyChanged(bool busy);
  void failed(const QString& message);  ///< the study broke down: a fault of the program

 private:
  struct Job {
    Study study;
    quint64 number = 0;
  };
  void work(const std::stop_token& quit);
  void run(const Job& job, const std::stop_token& stop);
  void post(quint64 number, std::function<void()> show);
  void setBusy(bool busy);

  quint64 m_number = 0;  // of the latest request; all older ones are void
  bool m_busy = false;
  std::mutex m_mutex;
  std::condition_variable_any m_wake;
  std::optional<Job> m_waiting;
  std::stop_source m_running{std::nostopstate};
  std::jthread m_thread;  // last: it starts when all else is there and ends first
};

}  // namespace jw
