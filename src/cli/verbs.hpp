#pragma once
#include "cli/options.hpp"

namespace gapsound {

// One verb of the command line each. They print their answer, return the exit code and throw Error.

int runCard(const CardOptions& options);
int runCheck(const CheckOptions& options);
int runClip(const ClipOptions& options);
int runCorrect(const CorrectOptions& options);
int runFaults(const FaultsOptions& options);
int runFilm(const FilmOptions& options);
int runGather(const GatherOptions& options);
int runList(const ListOptions& options);
int runMatrix(const MatrixOptions& options);
int runNew(const NewOptions& options);
int runQuestion(const QuestionOptions& options);
int runRep(const RepOptions& options);
int runReps(const ManyOptions& options);
int runScout(const ScoutOptions& options);
int runSheet(const SheetOptions& options);
int runStrip(const StripOptions& options);
int runVary(const VaryOptions& options);
int runWeek(const WeekOptions& options);
int runVersus(const VersusOptions& options);

}  // namespace gapsound
