#include "core/files/heat_curve.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

namespace jw {
namespace {

using testing::HasSubstr;

InputError errorOf(std::string_view text) {
  const auto curve = readHeatCurve(text, "log.csv");
  return curve ? InputError{} : curve.error();
}

// Scales by definition: T/°C = (T/°F - 32) 5/9 = T/K - 273.15 (ISO 80000-5).
TEST(HeatCurveText, ReadsNamesAndUnits) {
  const auto curve = readHeatCurve(
      "power [kW]; time [min]; winding [degF]; housing [K]\n0,04;0;68;293,15\n0,04;2;212;303,15\n",
      "log.csv");
  ASSERT_TRUE(curve) << describe(curve.error());
  EXPECT_DOUBLE_EQ(curve->time[1], 120);
  EXPECT_NEAR(curve->winding[0], 20, 1e-9);
  EXPECT_NEAR(curve->winding[1], 100, 1e-9);
  EXPECT_NEAR(curve->housing[1], 30, 1e-9);
  EXPECT_DOUBLE_EQ(curve->power[0], 40);
}

TEST(HeatCurveText, WithoutNamesTheColumnsAreTimeWindingPowerHousing) {
  const auto three = readHeatCurve("0,20,40\n60,25,40\n", "log.csv");
  ASSERT_TRUE(three);
  EXPECT_EQ(three->winding[1], 25);
  EXPECT_EQ(three->power[1], 40);
  EXPECT_EQ(three->housing.size(), 0);
  const auto four = readHeatCurve("0,20,40,21\n60,25,40,22\n", "log.csv");
  ASSERT_TRUE(four);
  EXPECT_EQ(four->housing[1], 22);
}

TEST(HeatCurveText, ErrorsNameLineAndColumn) {
  EXPECT_EQ(errorOf("time,winding,power\n0,20,1\n1,x,1\n").where,
            "log.csv, line 3, column winding temperature");
  EXPECT_THAT(errorOf("time,winding\n0,20\n").what, HasSubstr("no column of power"));
  EXPECT_THAT(errorOf("time,winding [m],power\n0,20,1\n").what, HasSubstr("no unit of"));
  const InputError back = errorOf("0,20,1\n5,21,1\n4,22,1\n");
  EXPECT_EQ(back.where, "log.csv, line 3, column time");
  EXPECT_THAT(errorOf("time,winding,power\n").what, HasSubstr("no rows"));
  EXPECT_THAT(errorOf("0,20\n1,21\n").what, HasSubstr("2 values"));
  EXPECT_FALSE(errorOf("").what.empty());
}

}  // namespace
}  // namespace jw
