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

/// The example project and every variant of every sample.
inline std::vector<NamedProject> everyProject() {
  std::vector<NamedProject> all{{"example", exampleProject()}};
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
