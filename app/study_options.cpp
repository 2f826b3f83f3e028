#include "app/study_options.h"

#include <limits>

#include "core/studies/catalogue_search.h"
#include "core/studies/tolerance.h"

namespace jw {
namespace {

constexpr const char* kSetHelp =
    "Change a field before evaluating, e.g. --set \"motor.rotorInertia=0.5 kg*cm^2\" or "
    "--set transmission[0].ratio=50; may be repeated. 'jointwright fields' lists the paths.";

constexpr const char* kSweepFooter =
    R"(RANGE is FROM..TO:STEP or FROM..TO/COUNT; each number in the field's unit or with its own:
  --over "transmission[0].ratio=40..160:1"     one stage's ratio
  --over ratio=40..400/200                     the ratio from motor to joint: that of the stage with
                                               the largest ratio is changed, the others stay
  --over "load.payloadMass=0.5 kg..8 kg/16"    any number, as 'jointwright fields' lists them
  --over A --over B                            both together, as a map
A ratio that follows from teeth is typed over as a data sheet would state it: what else the parts
tell (efficiency, inertia, stiffness) stays that of the parts as they are.

CSV has one row for each value: the value, "holds" (no verdict is short), the worst margin and its
check, "margin CHECK" for every check (empty when open or not asked, "inf" when nothing is
demanded), every headline figure in its unit. Margins are shares: 0.2 is 20 %. A map has one row for each pair.
The same input gives the same output, byte for byte.

Exit code
  0  at least one value (or pair) has no short verdict
  1  none has
  2  bad input; the message is on standard error and nothing else is written)";

void addSweep(CLI::App& app, SweepRequest& request) {
  CLI::App* command =
      app.add_subcommand("sweep", "Every margin over a range of one field, or of two as a map");
  addFile(*command, request.project);
  command->add_option("--over", request.over, "What is swept; may be given twice")
      ->required()
      ->expected(1, 2)
      ->type_name("PATH=RANGE")
      ->allow_extra_args(false);
  command->add_flag("--csv", request.asCsv, "Print CSV");
  addSet(*command, request.project);
  command->footer(kSweepFooter);
}

constexpr const char* kToleranceFooter =
    R"(Every input with a band is drawn from its distribution and the design evaluated in full, draw by
draw (JCGM 101); the law of propagation stands beside it (JCGM 100). Bands are kept in the project;
--band adds or replaces some for this run:
  --band "motor.torqueConstant=± 5 % normal" --band "load.payloadMass=± 0.2 kg"
Shapes: uniform (if none is named), triangular, normal (the band holds two standard deviations on
either side). Inputs are drawn independently. The same seed gives the same output, byte for byte.

JSON
  {"format": "jointwright tolerance", "version": 1, "file", "project", "variant", "draws", "seed",
   "inputs": [{"path", "label", "unit", "nominal", "half_width", "shape", "deviation",
               "out_of_range"}],               draws held at the end of the range allowed
   "all": SPREAD,                              the smallest margin of each draw
   "checks": [{"id", "stage", "title", ...SPREAD}],
   "caution", "cautions": [text]}              in general, and what belongs beside these checks
  SPREAD: "nominal", "mean", "deviation", "low", "median", "high" (95 % of the draws lie between low
  and high) of the margin, "chance", "chance_low", "chance_high" (share of the draws in which it is
  not short, with its 95 % interval), "open" (draws in which it could not be told),
  "rank_correlation": {path: value}, "linear": {"deviation", "chance", "shares": {path: value}}
  Shares are the change of the margin over one standard deviation of the input. Numbers that are
  missing or not finite are null.

Exit code
  0  every check holds in every draw (open ones are passed over)
  1  some are short in some draw
  2  bad input; the message is on standard error and nothing else is written)";

void addTolerance(CLI::App& app, ToleranceCommand& request) {
  CLI::App* command =
      app.add_subcommand("tolerance", "How likely the verdicts hold when inputs are off");
  addFile(*command, request.project);
  addWhole(*command, "--draws", request.draws, 2, kMostDraws, "How many designs are drawn (10000)");
  addWhole(*command, "--seed", request.seed, 0, std::numeric_limits<unsigned>::max(),
           "Start of the random numbers (1)");
  command->add_option("--band", request.bands, "Give an input a band; may be repeated")
      ->type_name("PATH=BAND")
      ->allow_extra_args(false);
  command->add_flag("--json", request.asJson, "Print JSON");
  addSet(*command, request.project);
  command->footer(kToleranceFooter);
}

constexpr const char* kSearchFooter =
    R"(Tries every motor with every reducer, and with every ratio of a belt if one is named; all else of
the joint stays. A quick screening rejects what is short for certain, the rest is evaluated in full.

Catalogues are text with a line of titles: "name" and fields of a motor or a stage as 'jointwright
fields' lists them, with units in brackets: "rotorInertia [kg*cm^2]". Reducers need a "family" too.
Without --motors or --reducers the bundled catalogues are taken; everything in them is invented.

FIGURE is mass, length, diameter, loss, margin (the worst), "margin CHECK", open, or the id of a
headline figure that 'check --json' lists. "open" counts the verdicts that the design as it stands can
tell and the combination cannot, for want of a part's data: a motor without a brake leaves holding
open. Such a one is found; "--where open<=0" keeps it out.

CSV has one row for each combination that was found: motor, reducer, belt ratio, worst margin and
its check, open verdicts, mass, length, diameter, mean loss, every margin, every headline figure.

Exit code
  0  at least one combination has no short verdict and passes the filters
  1  none does
  2  bad input; the message is on standard error and nothing else is written)";

void addSearchStudy(CLI::App& command, SearchCommand& request) {
  command.add_option("--where", request.filters, "Keep those with FIGURE<=VALUE or FIGURE>=VALUE")
      ->type_name("FILTER")
      ->allow_extra_args(false);
  command.add_option("--sort", request.sort, "Best first by this figure (mass)")
      ->type_name("FIGURE");
  command.add_option("--pareto", request.pareto, "Only those that none beats in both figures")
      ->expected(2)
      ->type_name("FIGURE FIGURE");
  command.add_option("--explain", request.explain, "Say why one combination falls short")
      ->expected(2)
      ->type_name("MOTOR REDUCER");
  command.add_option("--adopt", request.adopt, "Write the project with the first as a new variant")
      ->type_name("OUT");
  addWhole(command, "--most", request.most, 0, kMostCombinations,
           "Evaluate the lightest N only (0 = all)");
  command.add_flag("--csv", request.asCsv, "Print CSV");
}

void addSearch(CLI::App& app, SearchCommand& request) {
  CLI::App* command =
      app.add_subcommand("search", "Find motors and reducers in catalogues that do the job");
  addFile(*command, request.project);
  command->add_option("--motors", request.motors, "Catalogue of motors")->type_name("CSV");
  command->add_option("--reducers", request.reducers, "Catalogue of reducers")->type_name("CSV");
  command->add_option("--stage", request.stage, "Stage that reducers are put at, from 0")
      ->type_name("K");
  command->add_option("--belt", request.belt, "Stage and ratios that vary, e.g. 0=1..3/9")
      ->type_name("K=RANGE");
  addSearchStudy(*command, request);
  addSet(*command, request.project);
  command->footer(kSearchFooter);
}

constexpr const char* kRemediesFooter =
    R"(For each short or close verdict and each input that its margin depends on: the smallest change of
that input alone that restores the target margin, found on the full evaluation, and the verdicts that
it makes worse. Inputs go from a tenth to ten times their value, within their range; losses and play
only get smaller; what is given (ambient, altitude) and constants stay. Payload, moves and
requirements are listed apart: they ask for less. Whole numbers go in steps; a ratio that follows from
teeth goes to the nearest one that can be built; with --motors the nearest motor in mass is named.

"Depends on" is the change of a margin per relative change of an input: points of margin per per cent
of the input (of a temperature: of its rise over the ambient).

JSON
  {"format": "jointwright remedies", "version": 1, "file", "project", "variant", "target",
   "checks": [{"id", "stage", "title", "state", "margin",
     "depends_on": [{"path", "label", "slope", "below", "above", "corner"}],   strongest first
     "remedies": [{"kind": field, parts or motor, "asks_less", "path", "label", "unit", "from", "to",
                   "change", "set": {path: text}, "motor", "margin",
                   "moves": [{"id", "stage", "title", "before", "after", "was", "becomes"}]}],
     "cannot": [{"asks_less", "path", "label", "unit", "from", "best", "margin"}]}],
   "caution", "cautions": [text]}              in general, and what belongs beside these checks
  Margins and changes are shares: 0.2 is 20 %. Numbers that are missing or not finite are null.

Exit code
  0  every verdict holds or is close (open ones are passed over)
  1  at least one is short
  2  bad input; the message is on standard error and nothing else is written)";

void addRemedies(CLI::App& app, RemediesCommand& request) {
  CLI::App* command = app.add_subcommand(
      "remedies", "What would make short verdicts hold, and what each margin depends on");
  addFile(*command, request.project);
  command->add_option("--check", request.check, "This verdict only, by its id")->type_name("ID");
  command->add_option("--motors", request.motors, "Catalogue of motors to choose from")
      ->type_name("CSV");
  command->add_flag("--json", request.asJson, "Print JSON");
  addSet(*command, request.project);
  command->footer(kRemediesFooter);
}

}  // namespace

void addFile(CLI::App& command, ProjectRequest& request) {
  command.add_option("FILE", request.file, "The project")->required()->type_name("");
}

void addSet(CLI::App& command, ProjectRequest& request) {
  command.add_option("--set", request.settings, kSetHelp)
      ->type_name("PATH=VALUE")
      ->allow_extra_args(false);
}

void addStudies(CLI::App& app, StudyRequests& requests) {
  addSweep(app, requests.sweep);
  addTolerance(app, requests.tolerance);
  addSearch(app, requests.search);
  addRemedies(app, requests.remedies);
}

}  // namespace jw
