#include "app/command_line.h"

#include <memory>
#include <optional>

#include <QFileInfo>

#include <fmt/format.h>
#include <fmt/ranges.h>
#include <CLI/CLI.hpp>

#include "app/commands.h"
#include "app/requested_project.h"
#include "app/study_options.h"
#include "app/window_command.h"

namespace jw {
namespace {

/// What the command line may say; one command is chosen, or none for the window.
struct Request {
  std::string file;
  CheckRequest check;
  FigureRequest figure;
  ReviewRequest review;
  StudyRequests studies;
  bool fieldsAsJson = false;
};

constexpr const char* kCheckFooter = R"(Exit code
  0  no verdict is short (close, inside the target margin, counts as holding; so do, unless
     --strict is given, open, an input that is missing, and short that someone has accepted)
  1  some are short (with --strict: or open)
  2  bad input; the message is on standard error and nothing else is written

JSON
  {"format": "jointwright check", "version": 1, "file", "project", "variant",
   "checks": [{"id", "stage", "title", "demand", "capacity", "unit", "margin", "unlimited",
               "state", "missing",             worst first: short, close, open, holds
               "accepted": {"date", "note", "stands"}}],    null if nobody has accepted it
   "quantities": {id: {"value", "unit", "label"}},
   "missing": [{"what", "where", "remedy"}],   what kept a part from being evaluated
   "notices": [{"what", "where", "remedy"}],   remarks about inputs and file
   "worst": {"id", "stage", "state", "margin"},
   "caution", "cautions": [text]}              in general, and what belongs beside the checks listed
  stage counts from 1 and is null for a check of no stage. margin is capacity/demand - 1; it is null
  when open and when nothing is demanded, the latter with "unlimited": true. A number that is
  missing or not finite is null. An acceptance stands until demand or capacity has changed by more than
  requirements.acceptedBand; then it is reopened. Keys may be added; those named here stay.)";

void addCheck(CLI::App& app, CheckRequest& request) {
  CLI::App* command = app.add_subcommand("check", "Say whether the design holds, worst first");
  addFile(*command, request.project);
  command->add_flag("--json", request.asJson, "Print JSON");
  command->add_flag("--strict", request.strict, "Count open verdicts and accepted ones too");
  addSet(*command, request.project);
  command->footer(kCheckFooter);
}

void addFigure(CLI::App& app, FigureRequest& request) {
  CLI::App* command = app.add_subcommand("figure", "Draw one figure, light on white");
  addFile(*command, request.project);
  command
      ->add_option(
          "--view", request.view,
          "envelope, cycle, heat, overload, ratio, sweep, map, precision, efficiency, response, "
          "toolerror, tolerance, distribution, tornado, envelopeband, families, familymap, search, "
          "power or drive (drive2: stage 2)")
      ->required()
      ->type_name("NAME");
  command->add_option("-o,--output", request.output, "File to write: .png, .svg or .pdf")
      ->required()
      ->type_name("OUT");
  command->add_option("--size", request.size, "Width x height in mm (160x110)")->type_name("WxH");
  addWhole(*command, "--dpi", request.dpi, 36, 1200, "Pixels per inch of a PNG (300)");
  addSet(*command, request.project);
}

void addReview(CLI::App& app, ReviewRequest& request) {
  CLI::App* command =
      app.add_subcommand("review", "Write review.pdf, the figures and verdicts.txt to a folder");
  addFile(*command, request.project);
  command->add_option("-o,--output", request.folder, "Folder to write to")
      ->required()
      ->type_name("FOLDER");
  addSet(*command, request.project);
}

void addFields(CLI::App& app, bool& asJson) {
  CLI::App* command =
      app.add_subcommand("fields", "List every parameter: path, unit, allowed values, meaning");
  command->add_flag("--json", asJson, "Print JSON");
}

void describeProgram(CLI::App& app, Request& request) {
  app.description(
      "Jointwright shapes the actuator of one robot joint and says whether it will do "
      "the job.\nWithout a command the window opens.");
  app.set_version_flag("--version", std::string("Jointwright ") + JW_VERSION);
  app.add_option("FILE", request.file, "Project to open in the window")->type_name("");
  app.require_subcommand(0, 1);
  app.failure_message([](const CLI::App* command, const CLI::Error& error) {
    return "jointwright: " + CLI::FailureMessage::simple(command, error);
  });
  addCheck(app, request.check);
  addFigure(app, request.figure);
  addReview(app, request.review);
  addStudies(app, request.studies);
  addFields(app, request.fieldsAsJson);
}

std::vector<std::string> commandNames(const CLI::App& app) {
  std::vector<std::string> names;
  for (const CLI::App* one : app.get_subcommands([](const CLI::App*) { return true; })) {
    names.push_back(one->get_name());
  }
  return names;
}

/// For a first word that is neither a command nor a file, with others behind it or without the look
/// of a file's name.
std::optional<InputError> unknownCommand(const CLI::App& app, const std::string& word,
                                         bool othersFollow) {
  const bool named = othersFollow || word.find_first_of("./\\") == word.npos;
  if (word.empty() || !named || !app.get_subcommands().empty()) return std::nullopt;
  if (QFileInfo::exists(QString::fromLocal8Bit(word.c_str()))) return std::nullopt;
  const char* nothing = othersFollow ? "no command" : "neither a command nor a file";
  return InputError{fmt::format("there is {} '{}'", nothing, word), "",
                    fmt::format("commands are {}", fmt::join(commandNames(app), ", "))};
}

int dispatch(const CLI::App& app, const Request& request, int& argc, char** argv) {
  if (app.got_subcommand("check")) return runCheck(request.check);
  if (app.got_subcommand("fields")) return runFields(request.fieldsAsJson);
  if (app.got_subcommand("figure")) return runFigure(request.figure, argc, argv);
  if (app.got_subcommand("review")) return runReview(request.review, argc, argv);
  if (app.got_subcommand("sweep")) return runSweep(request.studies.sweep);
  if (app.got_subcommand("tolerance")) return runTolerance(request.studies.tolerance);
  if (app.got_subcommand("search")) return runSearch(request.studies.search);
  if (app.got_subcommand("remedies")) return runRemedies(request.studies.remedies);
  return runWindow(QString::fromLocal8Bit(request.file.c_str()), argc, argv);
}

}  // namespace

int runProgram(int argc, char** argv) {
  CLI::App app("", "jointwright");
  Request request;
  describeProgram(app, request);
  try {
    app.parse(argc, argv);
  } catch (const CLI::ExtrasError& error) {
    if (const auto unknown = unknownCommand(app, request.file, true)) {
      return reportBadInput(*unknown);
    }
    app.exit(error);
    return kBadInput;
  } catch (const CLI::ParseError& error) {
    return app.exit(error) == 0 ? kAllHold : kBadInput;
  }
  if (const auto unknown = unknownCommand(app, request.file, false)) {
    return reportBadInput(*unknown);
  }
  return dispatch(app, request, argc, argv);
}

}  // namespace jw
