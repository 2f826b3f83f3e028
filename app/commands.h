#pragma once

#include <string>
#include <vector>

namespace jw {

/// A project file and changes to make before it is evaluated.
struct ProjectRequest {
  std::string file;
  std::vector<std::string> settings;  ///< "path=value"
};

struct CheckRequest {
  ProjectRequest project;
  bool asJson = false;
  bool strict = false;  ///< open counts like short, accepted or not
};

struct FigureRequest {
  ProjectRequest project;
  std::string view;
  std::string output;
  std::string size = "160x110";  ///< [mm]
  int dpi = 300;
};

struct ReviewRequest {
  ProjectRequest project;
  std::string folder;
};

/// Each returns an ExitCode. check and fields need neither a display nor a GUI application.
int runCheck(const CheckRequest& request);
int runFields(bool asJson);
int runFigure(const FigureRequest& request, int& argc, char** argv);
int runReview(const ReviewRequest& request, int& argc, char** argv);

}  // namespace jw
