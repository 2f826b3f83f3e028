// Studies beside the window. Expectations are the class's own contract: nothing outside the project
// says what it should do.
#include "widgets/study_thread.h"

#include <atomic>
#include <stdexcept>

#include <gtest/gtest.h>
#include <QSignalSpy>
#include <QtTest>

namespace jw {
namespace {

constexpr int kPatience = 5000;  // [ms]

void waitForStop(const StudyContext& study) {
  while (!study.stop.stop_requested()) std::this_thread::sleep_for(std::chrono::milliseconds(1));
}

TEST(StudyThread, ShowsInOrderOnTheWindowsThread) {
  StudyThread thread;
  std::vector<int> shown;
  bool here = true;
  thread.request([&](const StudyContext& study) {
    for (int i = 0; i < 100; ++i)
      study.post([&, i] {
        shown.push_back(i);
        here = here && QThread::currentThread() == qApp->thread();
      });
  });
  EXPECT_TRUE(thread.isBusy());
  ASSERT_TRUE(QTest::qWaitFor([&] { return !thread.isBusy(); }, kPatience));
  ASSERT_EQ(shown.size(), 100u);
  EXPECT_TRUE(std::is_sorted(shown.begin(), shown.end()));
  EXPECT_TRUE(here);
}

TEST(StudyThread, LatestWinsAndNothingOfTheOthersIsShown) {
  StudyThread thread;
  std::atomic<int> started = 0;
  int shown = -1;
  thread.request([&](const StudyContext& study) {
    ++started;
    waitForStop(study);
    study.post([&] { shown = 0; });
  });
  ASSERT_TRUE(QTest::qWaitFor([&] { return started == 1; }, kPatience));
  for (int i = 1; i < 20; ++i)
    thread.request([&, i](const StudyContext& study) {
      ++started;
      study.post([&, i] { shown = i; });
    });
  ASSERT_TRUE(QTest::qWaitFor([&] { return !thread.isBusy(); }, kPatience));
  EXPECT_EQ(shown, 19);
}

TEST(StudyThread, StoppedShowsNothingMore) {
  StudyThread thread;
  std::atomic<bool> started = false;
  bool shown = false;
  thread.request([&](const StudyContext& study) {
    started = true;
    waitForStop(study);
    study.post([&] { shown = true; });
  });
  ASSERT_TRUE(QTest::qWaitFor([&] { return started.load(); }, kPatience));
  QSignalSpy busy(&thread, &StudyThread::busyChanged);
  thread.stop();
  EXPECT_EQ(busy.size(), 1);
  QTest::qWait(50);
  EXPECT_FALSE(shown);
}

TEST(StudyThread, TellsOfAFault) {
  StudyThread thread;
  QSignalSpy failed(&thread, &StudyThread::failed);
  thread.request([](const StudyContext&) { throw std::logic_error("no such stage"); });
  ASSERT_TRUE(QTest::qWaitFor([&] { return !thread.isBusy(); }, kPatience));
  ASSERT_EQ(failed.size(), 1);
  EXPECT_EQ(failed[0][0].toString(), "no such stage");
}

TEST(StudyThread, EndsWithAStudyAtWork) {
  std::atomic<bool> started = false;
  {
    StudyThread thread;
    thread.request([&](const StudyContext& study) {
      started = true;
      waitForStop(study);
    });
    ASSERT_TRUE(QTest::qWaitFor([&] { return started.load(); }, kPatience));
  }
  SUCCEED();
}

}  // namespace
}  // namespace jw
