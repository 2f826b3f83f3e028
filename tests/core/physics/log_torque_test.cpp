// The torque of a load at the rows of a log, against Newton-Euler written out by hand.
#include "core/physics/log_torque.h"

#include <cmath>

#include <gtest/gtest.h>

namespace jw {
namespace {

TEST(LogTorque, IsTheLoadsAtEveryRow) {
  MeasuredLog log;
  for (int i = 0; i < 10'000; ++i) {  // more than one block
    log.time.push_back(1e-3 * i);
    log.position.push_back(std::sin(2e-3 * i));
  }
  const LogMotion motion = smoothLog(log, 0.01);
  Load load;
  load.inertia = 2;
  load.linkMass = 5;
  load.linkDistance = 0.4;
  load.viscousFriction = 0.3;
  load.coulombFriction = 1.1;
  const std::vector<double> torque = modelledTorque(log, motion, load);
  ASSERT_EQ(torque.size(), log.rows());
  for (const std::size_t i :
       {std::size_t{0}, std::size_t{4095}, std::size_t{4096}, log.rows() - 1}) {
    const double v = motion.speed[i];
    EXPECT_NEAR(torque[i],
                2 * motion.acceleration[i] + 5 * 0.4 * 9.80665 * std::cos(motion.position[i]) +
                    0.3 * v + std::copysign(1.1, v),
                1e-9)
        << i;
  }
}

TEST(LogTorque, AnUnsetInertiaGivesNone) {
  MeasuredLog log;
  for (int i = 0; i < 20; ++i) {
    log.time.push_back(0.1 * i);
    log.position.push_back(0.01 * i * i);
  }
  EXPECT_TRUE(std::isnan(modelledTorque(log, smoothLog(log, 1), Load{})[5]));
}

}  // namespace
}  // namespace jw
