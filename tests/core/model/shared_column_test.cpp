// A column behaves as a vector whose copies share their numbers until one is changed.
#include "core/model/shared_column.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

namespace jw {
namespace {

using testing::ElementsAre;
using testing::IsEmpty;

TEST(SharedColumn, CopiesShareUntilOneIsChanged) {
  SharedColumn column{1, 2, 3};
  SharedColumn copy = column;
  EXPECT_EQ(copy.data(), column.data());
  copy.own()[1] = 7;
  EXPECT_NE(copy.data(), column.data());
  EXPECT_THAT(column, ElementsAre(1, 2, 3));
  EXPECT_THAT(copy, ElementsAre(1, 7, 3));
  const double* alone = copy.data();
  copy.own()[0] = 0;  // alone already: nothing is copied
  EXPECT_EQ(copy.data(), alone);
}

TEST(SharedColumn, EqualNumbersAreEqualHoweverHeld) {
  EXPECT_EQ(SharedColumn({1, 2}), SharedColumn({1, 2}));
  EXPECT_FALSE(SharedColumn({1, 2}) == SharedColumn({1, 3}));
  EXPECT_EQ(SharedColumn(), SharedColumn(std::vector<double>{}));
  EXPECT_THAT(SharedColumn(), IsEmpty());
}

TEST(SharedColumn, GrowsAndIsReplaced) {
  SharedColumn column;
  column.push_back(4);
  EXPECT_EQ(column.back(), 4);
  column = std::vector<double>{5, 6};
  EXPECT_EQ(column.size(), 2u);
}

}  // namespace
}  // namespace jw
