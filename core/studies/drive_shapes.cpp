#include "core/studies/drive_shapes.h"

#include <fmt/format.h>

#include "core/studies/drive_families.h"
#include "core/studies/drive_outlines.h"

namespace jw {
namespace {

drive::Result shapesOf(const Stage& stage, const std::string& path) {
  switch (stage.family) {
    case StageFamily::Planetary: return drive::planetary(stage, path);
    case StageFamily::ParallelShaft: return drive::gearPair(stage, path);
    case StageFamily::Cycloidal: return drive::cycloid(stage, path);
    case StageFamily::StrainWave: return drive::strainWave(stage, path);
    case StageFamily::Traction: return drive::rollers(stage, path);
    case StageFamily::Belt: return drive::belt(stage, path);
    case StageFamily::Coupling: return drive::coupling(stage, path);
    case StageFamily::GivenRatio: break;
  }
  return drive::givenRatio(stage, path);
}

// All that a body can cover as it turns; of one that bends, what it covers at first.
DriveBounds boundsOf(const DriveBody& body) {
  if (!body.bent) {
    const double reach = body.motion.orbitRadius + drive::radiusOf(body);
    return {body.motion.pivot.array() - reach, body.motion.pivot.array() + reach};
  }
  Outlines outlines, marks;
  body.bent(0, outlines, marks);
  DriveBounds box{outlines.at(0).at(0), outlines.at(0).at(0)};
  for (const Eigen::Vector2d& point : outlines[0])
    box = {box.low.cwiseMin(point), box.high.cwiseMax(point)};
  return box;
}

void extend(DriveBounds& bounds, const DriveBody& body, bool first) {
  const auto [low, high] = boundsOf(body);
  bounds.low = first ? low : bounds.low.cwiseMin(low).eval();
  bounds.high = first ? high : bounds.high.cwiseMax(high).eval();
}

}  // namespace

DrivePose DriveMotion::at(double inputAngle) const {
  return {pivot + drive::polar(orbitRadius, orbitStart + orbitRate * inputAngle),
          turnStart + turnRate * inputAngle};
}

tl::expected<DriveShapes, std::vector<InputError>> driveShapes(const Stage& stage,
                                                               const std::string& path) {
  auto shapes = shapesOf(stage, path);
  if (!shapes) return shapes;
  for (std::size_t i = 0; i < shapes->bodies.size(); ++i)
    extend(shapes->bounds, shapes->bodies[i], i == 0);
  return shapes;
}

namespace drive {

double moduleOf(const Toothing& toothing, DriveShapes& shapes) {
  if (isSet(toothing.module)) return toothing.module;
  shapes.remarks.emplace_back("The module is not given: drawn with 1 mm, in proportion.");
  return 1e-3;
}

std::string count(double number, std::string_view noun) {
  return fmt::format("{:.0f} {}", number, noun);
}

}  // namespace drive
}  // namespace jw
