// Undo and redo over project values.
#include "app/history.h"

#include <gtest/gtest.h>

namespace jw {
namespace {

ProjectPtr titled(const std::string& title) {
  auto project = std::make_shared<Project>();
  project->title = title;
  return project;
}

TEST(History, StartsCleanWithNothingToUndo) {
  const History history(titled("a"));
  EXPECT_TRUE(history.isClean());
  EXPECT_FALSE(history.canUndo());
  EXPECT_FALSE(history.canRedo());
}

TEST(History, EqualValueLeavesNoStep) {
  History history(titled("a"));
  EXPECT_FALSE(history.push(titled("a"), "Nothing"));
  EXPECT_FALSE(history.canUndo());
}

TEST(History, SameGestureIsOneStep) {
  History history(titled("a"));
  history.push(titled("b"), "Slide", "slider");
  history.push(titled("c"), "Slide", "slider");
  history.push(titled("d"), "Slide", "other slider");
  history.undo();
  EXPECT_EQ(history.current()->title, "c");
  history.undo();
  EXPECT_EQ(history.current()->title, "a");
}

TEST(History, StepsWithoutGestureStaySeparate) {
  History history(titled("a"));
  history.push(titled("b"), "One");
  history.push(titled("c"), "Two");
  history.undo();
  EXPECT_EQ(history.current()->title, "b");
  EXPECT_EQ(history.undoText(), "One");
  EXPECT_EQ(history.redoText(), "Two");
}

TEST(History, GestureThatReturnsLeavesNoStep) {
  History history(titled("a"));
  history.push(titled("b"), "Slide", "slider");
  EXPECT_TRUE(history.push(titled("a"), "Slide", "slider"));
  EXPECT_EQ(history.current()->title, "a");
  EXPECT_FALSE(history.canUndo());
  EXPECT_TRUE(history.isClean());
}

TEST(History, SavingEndsTheGesture) {
  History history(titled("a"));
  history.push(titled("b"), "Slide", "slider");
  history.markClean();
  history.push(titled("c"), "Slide", "slider");
  EXPECT_FALSE(history.isClean());
  history.undo();
  EXPECT_TRUE(history.isClean());
}

TEST(History, NewStepForgetsWhatWasUndone) {
  History history(titled("a"));
  history.push(titled("b"), "One");
  history.undo();
  history.push(titled("c"), "Two");
  EXPECT_FALSE(history.canRedo());
  history.undo();
  EXPECT_EQ(history.current()->title, "a");
}

TEST(History, ValueIsCleanHoweverItWasReached) {
  History history(titled("a"));
  history.push(titled("b"), "There");
  history.push(titled("a"), "Back");
  EXPECT_TRUE(history.isClean());
  history.markNeverClean();
  EXPECT_FALSE(history.isClean());
}

TEST(History, LengthIsLimitedAndTheLatestStepsStay) {
  History history(titled("start"));
  for (int k = 0; k < 1500; ++k) history.push(titled(std::to_string(k)), "Step");
  int undone = 0;
  for (; history.canUndo(); ++undone) history.undo();
  EXPECT_EQ(undone, 999);
  EXPECT_EQ(history.current()->title, "500");
}

}  // namespace
}  // namespace jw
