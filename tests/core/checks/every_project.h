#pragma once

#include <algorithm>
#include <filesystem>
#include <fstream>
#include <sstream>
#include <string>
#include <vector>

#include <gtest/gtest.h>

#include "core/files/project_text.h"
#include "tests/core/checks/example_project.h"

namespace jw {

/// A project with a name that test output can show.
struct NamedProject {
  std::string name;
  Project project;
};

inline std::vector<std::filesystem::path> sampleFiles() {
  std::vector<std::filesystem::path> files;
  for (const auto& entry : std::filesystem::directory_iterator(JW_SAMPLES_DIR)) {
    if (entry.path().extension() == ".jointwright") files.push_back(entry.path());
  }
  std::sort(files.begin(), files.end());
  return files;
}

/// The example project with all that a load may have.
inline Project projectOfEveryLoad() {
  Project project = exampleProject();
  Load& load = project.load;
  load.mounting = Mounting::Direction;
  load.downX = 0.3, load.downY = -1, load.downZ = -0.4;
  load.masses = {
      {.name = "tool",
       .mass = 1.5,
       .x = 0.4,
       .y = -0.1,
       .z = 0.05,
       .inertia = 2e-3,
       .asWritten = {}},
      {.name = "counterweight", .mass = 4, .x = -0.2, .y = 0, .z = -0.03, .asWritten = {}}};
  load.breakawayFriction = 1.4, load.stribeckSpeed = 0.2;
  load.springStiffness = 3, load.springAngle = 0.5, load.balanceTorque = 2;
  load.extensionRate = 400, load.extensionFreeLength = 0.1, load.extensionPreload = 20;
  load.extensionArm = 0.08, load.extensionArmAngle = 0.2, load.extensionPost = 0.15;
  load.externalOver = ExternalOver::Time;
  load.externalTable = "0.2 s 1 N*m; 1.4 s -2 N*m; 2.5 s 1 N*m";
  return project;
}

/// The example project, one of every load and every variant of every sample.
inline std::vector<NamedProject> everyProject() {
  std::vector<NamedProject> all{{"example", exampleProject()},
                                {"every load", projectOfEveryLoad()}};
  for (const auto& path : sampleFiles()) {
    std::ifstream file(path, std::ios::binary);
    std::ostringstream text;
    text << file.rdbuf();
    auto read = readProject(text.str(), path.filename().string());
    EXPECT_TRUE(read.has_value()) << (read ? "" : describe(read.error()));
    if (!read) continue;
    for (std::size_t k = 0; k < read->project.variants.size(); ++k) {
      read->project.activeVariant = static_cast<int>(k);
      all.push_back({path.stem().string() + ", variant " + std::to_string(k), read->project});
    }
  }
  return all;
}

}  // namespace jw
