// Whole jobs on patterns: reading, checking, moving a dart, drawing, and the program as a process.

#include <benchmark/benchmark.h>
#include <fcntl.h>
#include <spawn.h>
#include <sys/resource.h>
#include <sys/wait.h>
#include <unistd.h>

#include <cmath>
#include <ctime>
#include <filesystem>
#include <fstream>
#include <nlohmann/json.hpp>
#include <sstream>

#include "dartwright/assessing/assess.hpp"
#include "dartwright/checks/check.hpp"
#include "dartwright/comparing/compare.hpp"
#include "dartwright/cutting/lay_pattern.hpp"
#include "dartwright/darts/cap.hpp"
#include "dartwright/darts/merge.hpp"
#include "dartwright/darts/pivot.hpp"
#include "dartwright/drawing/cairo_writer.hpp"
#include "dartwright/drawing/cutting_drawing.hpp"
#include "dartwright/drawing/pattern_drawing.hpp"
#include "dartwright/drawing/svg_writer.hpp"
#include "dartwright/files/exercise_file.hpp"
#include "dartwright/files/pattern_file.hpp"
#include "dartwright/pages/paper.hpp"
#include "dartwright/pages/print_pages.hpp"
#include "dartwright/pages/printed_piece.hpp"
#include "kept_memory.hpp"

extern char** environ;

namespace {

using namespace dartwright;

const std::string block = DARTWRIGHT_SOURCE_DIR "/fixtures/blocks/close-fitting.json";

std::string text_of_file(const std::string& path) {
    std::ostringstream text;
    text << std::ifstream(path).rdbuf();
    return text.str();
}

// A pattern file of some 20 kB: the block's pieces several times over, each under a name of its own.
std::string text_of_20_kb() {
    Pattern pattern = read_pattern(text_of_file(block), "block");
    const std::vector<Piece> pieces = pattern.pieces;
    for (int copy = 2; write_pattern(pattern).size() < 20000; ++copy) {
        for (Piece piece : pieces) {
            piece.name += " " + std::to_string(copy);
            pattern.pieces.push_back(piece);
        }
    }
    return write_pattern(pattern);
}

PivotRequest to_side() {
    PivotRequest request;
    request.piece = "front";
    request.dart = "waist dart";
    request.to = "side@60/armhole";
    return request;
}

void parse_20_kb_json_library_alone(benchmark::State& state) {
    const std::string text = text_of_20_kb();
    for (auto _ : state) benchmark::DoNotOptimize(nlohmann::json::parse(text));
    state.SetBytesProcessed(static_cast<std::int64_t>(text.size()) * state.iterations());
}
BENCHMARK(parse_20_kb_json_library_alone)->Unit(benchmark::kMicrosecond);

void read_20_kb(benchmark::State& state) {
    const std::string text = text_of_20_kb();
    for (auto _ : state) benchmark::DoNotOptimize(read_pattern(text, "block"));
    state.SetBytesProcessed(static_cast<std::int64_t>(text.size()) * state.iterations());
}
BENCHMARK(read_20_kb)->Unit(benchmark::kMicrosecond);

void write_20_kb(benchmark::State& state) {
    const Pattern pattern = read_pattern(text_of_20_kb(), "block");
    for (auto _ : state) benchmark::DoNotOptimize(write_pattern(pattern));
}
BENCHMARK(write_20_kb)->Unit(benchmark::kMicrosecond);

void read_block(benchmark::State& state) {
    const std::string text = text_of_file(block);
    for (auto _ : state) benchmark::DoNotOptimize(read_pattern(text, "block"));
}
BENCHMARK(read_block)->Unit(benchmark::kMicrosecond);

void check_block(benchmark::State& state) {
    const Pattern pattern = read_pattern(text_of_file(block), "block");
    for (auto _ : state) benchmark::DoNotOptimize(check(pattern));
}
BENCHMARK(check_block)->Unit(benchmark::kMicrosecond);

void pivot_block(benchmark::State& state) {
    const Pattern pattern = read_pattern(text_of_file(block), "block");
    const PivotRequest request = to_side();
    for (auto _ : state) benchmark::DoNotOptimize(pivot(pattern, request));
}
BENCHMARK(pivot_block)->Unit(benchmark::kMicrosecond);

// There and back five times: ten operations, each on the result of the one before.
void chain_of_ten_pivots(benchmark::State& state) {
    const Pattern pattern = read_pattern(text_of_file(block), "block");
    PivotRequest back = to_side();
    back.to = "waist@119/side";
    for (auto _ : state) {
        Pattern moved = pattern;
        for (int k = 0; k < 5; ++k) moved = pivot(pivot(moved, to_side()).pattern, back).pattern;
        benchmark::DoNotOptimize(moved);
    }
}
BENCHMARK(chain_of_ten_pivots)->Unit(benchmark::kMicrosecond);

void cap_of_waist_dart(benchmark::State& state) {
    const Piece front = read_pattern(text_of_file(block), "block").pieces[0];
    const std::size_t dart = dart_named(front, "waist dart");
    for (auto _ : state) benchmark::DoNotOptimize(cap_of(front, dart, PressSide::after));
}
BENCHMARK(cap_of_waist_dart)->Unit(benchmark::kMicrosecond);

// The block before and after a pivot: both pieces, of which one has changed.
void compare_block(benchmark::State& state) {
    const Pattern before = read_pattern(text_of_file(block), "block");
    const Pattern after = pivot(before, to_side()).pattern;
    for (auto _ : state) benchmark::DoNotOptimize(compare(before, after));
}
BENCHMARK(compare_block)->Unit(benchmark::kMicrosecond);

void draw_block_as_svg(benchmark::State& state) {
    const Pattern pattern = read_pattern(text_of_file(block), "block");
    for (auto _ : state) benchmark::DoNotOptimize(to_svg(draw_pattern(pattern, {})));
}
BENCHMARK(draw_block_as_svg)->Unit(benchmark::kMicrosecond);

// A round piece of so many straight edges with one dart, its pivot in the middle.
Pattern round_piece(int edges) {
    Pattern pattern;
    pattern.name = "round";
    Piece piece;
    piece.name = "front";
    piece.cut = Cut{};
    piece.grain = Grain{{-100, -20}, {-100, 20}, ""};
    const double mouth = 0.1;  // and edges of over 2 mm, however many
    const auto at = [](double angle) { return Point{3000 * std::cos(angle), 3000 * std::sin(angle)}; };
    piece.outline.start = at(0);
    for (int k = 1; k <= edges; ++k) {
        const std::string run = 4 * k <= edges ? "side" : "waist";
        piece.outline.items.push_back({EdgeItem{run, StraightShape{}, 0}, at((2 * pi - mouth) * k / edges)});
    }
    piece.outline.items.push_back({DartItem{"waist dart", {0, 0}, {}, {}, {}, ""}, at(0)});
    pattern.pieces.push_back(piece);
    return pattern;
}

void check_by_edges(benchmark::State& state) {
    const Pattern pattern = round_piece(static_cast<int>(state.range(0)));
    for (auto _ : state) benchmark::DoNotOptimize(check(pattern));
    state.SetComplexityN(state.range(0));
}
BENCHMARK(check_by_edges)->RangeMultiplier(10)->Range(8, 8000)->Unit(benchmark::kMicrosecond)->Complexity();

void pivot_by_edges(benchmark::State& state) {
    const Pattern pattern = round_piece(static_cast<int>(state.range(0)));
    PivotRequest request = to_side();
    request.to = "side@50%";
    for (auto _ : state) benchmark::DoNotOptimize(pivot(pattern, request));
    state.SetComplexityN(state.range(0));
}
BENCHMARK(pivot_by_edges)->RangeMultiplier(10)->Range(8, 8000)->Unit(benchmark::kMicrosecond)->Complexity();

void compare_by_edges(benchmark::State& state) {
    const Pattern before = round_piece(static_cast<int>(state.range(0)));
    PivotRequest request = to_side();
    request.to = "side@50%";
    const Pattern after = pivot(before, request).pattern;
    for (auto _ : state) benchmark::DoNotOptimize(compare(before, after));
    state.SetComplexityN(state.range(0));
}
BENCHMARK(compare_by_edges)->RangeMultiplier(10)->Range(8, 8000)->Unit(benchmark::kMicrosecond)->Complexity();

// Of a piece of so many edges: those that the folded dart comes to lie over count.
void cap_by_edges(benchmark::State& state) {
    const Pattern pattern = round_piece(static_cast<int>(state.range(0)));
    const std::size_t dart = dart_named(pattern.pieces[0], "waist dart");
    for (auto _ : state) benchmark::DoNotOptimize(cap_of(pattern.pieces[0], dart, PressSide::after));
}
BENCHMARK(cap_by_edges)->RangeMultiplier(10)->Range(8, 8000)->Unit(benchmark::kMicrosecond);

// Edges of one name each, so that every one is named on its own.
Pattern named_edges(int edges) {
    Pattern pattern = round_piece(edges);
    int number = 0;
    for (OutlineItem& item : pattern.pieces[0].outline.items)
        if (auto* edge = std::get_if<EdgeItem>(&item.what)) edge->edge = "edge " + std::to_string(++number);
    return pattern;
}

// A round piece of 600 edges with so many darts.
Pattern round_of_darts(int darts) {
    constexpr int edges = 600;
    const double step = 2 * pi / edges;
    const auto at = [](double angle, double radius) {
        return Point{radius * std::cos(angle), radius * std::sin(angle)};
    };
    Pattern pattern;
    pattern.name = "round";
    pattern.pieces.emplace_back();
    Piece& piece = pattern.pieces[0];
    piece.name = "front";
    piece.cut = Cut{};
    piece.grain = Grain{{-100, -20}, {-100, 20}, ""};
    piece.outline.start = at(0, 3000);
    for (int k = 0; k < edges; ++k) {
        if (k % (edges / darts) == 0)
            piece.outline.items.push_back(
                {DartItem{"dart " + std::to_string(k), at((k + 0.2) * step, 2900), {}, {}, {}, ""},
                 at((k + 0.4) * step, 3000)});
        piece.outline.items.push_back({EdgeItem{"edge " + std::to_string(k / 30), StraightShape{}, 0},
                                       k + 1 == edges ? at(0, 3000) : at((k + 1) * step, 3000)});
    }
    return pattern;
}

// A disc 6 m across with so many darts round it, of which none says to which side it is pressed.
Pattern disc_of_darts(int darts) {
    const double step = 2 * pi / darts;
    const double half_mouth = std::min(10.0 / 3000, 0.15 * step);
    const auto at = [](double angle, double radius) {
        return Point{radius * std::cos(angle), radius * std::sin(angle)};
    };
    Pattern pattern;
    pattern.name = "disc";
    pattern.pieces.emplace_back();
    Piece& piece = pattern.pieces[0];
    piece.name = "disc";
    piece.cut = Cut{};
    piece.grain = Grain{{0, -20}, {0, 20}, ""};
    piece.outline.start = at(0, 3000);
    for (int k = 0; k < darts; ++k) {
        const double middle = (k + 0.5) * step;
        const Point end = k + 1 == darts ? piece.outline.start : at((k + 1) * step, 3000);
        piece.outline.items.push_back({EdgeItem{"rim", StraightShape{}, 0}, at(middle - half_mouth, 3000)});
        piece.outline.items.push_back(
            {DartItem{"dart " + std::to_string(k), at(middle, 2910), {}, {}, {}, ""},
             at(middle + half_mouth, 3000)});
        piece.outline.items.push_back({EdgeItem{"rim", StraightShape{}, 0}, end});
    }
    return pattern;
}

// A band with so many darts in its lower edge, 4 m wide: from 200 on not all words find a place beside
// theirs.
Pattern band_of_darts(int darts, double width = 4000) {
    const double step = width / darts;
    const double mouth = std::min(10.0, 0.3 * step);
    Pattern pattern;
    pattern.name = "band";
    pattern.pieces.emplace_back();
    Piece& piece = pattern.pieces[0];
    piece.name = "front";
    piece.cut = Cut{};
    piece.grain = Grain{{width / 2, 150}, {width / 2, 300}, ""};
    piece.outline.start = {0, 0};
    for (int k = 0; k < darts; ++k) {
        const double middle = (k + 0.5) * step;
        piece.outline.items.push_back({EdgeItem{"waist", StraightShape{}, 0}, {middle - mouth / 2, 0}});
        piece.outline.items.push_back(
            {DartItem{"dart " + std::to_string(k), {middle, 90}, {}, {}, {}, "side"},
             {middle + mouth / 2, 0}});
    }
    const auto add_edge = [&](const char* name, Point to) {
        piece.outline.items.push_back({EdgeItem{name, StraightShape{}, 0}, to});
    };
    add_edge("waist", {width, 0});
    add_edge("side", {width, 400});
    add_edge("top", {0, 400});
    add_edge("other side", {0, 0});
    return pattern;
}

Pattern many_pieces(int pieces) {
    Pattern pattern;
    pattern.name = "many";
    for (int p = 0; p < pieces; ++p) {
        pattern.pieces.emplace_back();
        Piece& piece = pattern.pieces.back();
        piece.name = "piece " + std::to_string(p);
        piece.cut = Cut{};
        const double radius = 40 + (p * 37) % 60;
        const auto at = [radius](int k) {
            return Point{radius * std::cos(k * pi / 12), radius * std::sin(k * pi / 12)};
        };
        piece.grain = Grain{{0, -20}, {0, 20}, ""};
        piece.outline.start = at(0);
        for (int k = 1; k <= 24; ++k)
            piece.outline.items.push_back({EdgeItem{"rim", StraightShape{}, 0}, at(k % 24)});
    }
    return pattern;
}

double processor_seconds() {
    timespec now{};
    clock_gettime(CLOCK_PROCESS_CPUTIME_ID, &now);
    return static_cast<double>(now.tv_sec) + 1e-9 * static_cast<double>(now.tv_nsec);
}

// Processor time of a job at several sizes, the least of three runs each, and the exponent that fits from
// small to large: 1 is in proportion.
template <class Make, class Do>
void grow(benchmark::State& state, const std::vector<int>& sizes, const Make& make, const Do& work) {
    for (auto _ : state) {
        std::vector<Point> logs;
        for (const int size : sizes) {
            const auto made = make(size);
            double least = 1e9;
            for (int run = 0; run < 3; ++run) {
                const double begun = processor_seconds();
                work(made);
                least = std::min(least, processor_seconds() - begun);
            }
            state.counters["ms at " + std::to_string(size)] = 1e3 * least;
            logs.push_back({std::log(size), std::log(least)});
        }
        Point mean{0, 0};
        for (const Point p : logs) mean = mean + (p - Point{0, 0}) / static_cast<double>(logs.size());
        double across = 0;
        double up = 0;
        for (const Point p : logs) {
            across += (p.x - mean.x) * (p.x - mean.x);
            up += (p.x - mean.x) * (p.y - mean.y);
        }
        state.counters["exponent"] = up / across;
    }
}

void growth_of_drawing_named_edges(benchmark::State& state) {
    grow(state, {100, 300, 1000, 3000}, named_edges,
         [](const Pattern& pattern) { benchmark::DoNotOptimize(to_svg(draw_pattern(pattern, {}))); });
}
BENCHMARK(growth_of_drawing_named_edges)->Iterations(1);

void growth_of_drawing_darts(benchmark::State& state) {
    grow(state, {10, 50, 200}, round_of_darts,
         [](const Pattern& pattern) { benchmark::DoNotOptimize(to_svg(draw_pattern(pattern, {}))); });
}
BENCHMARK(growth_of_drawing_darts)->Iterations(1);

void growth_of_drawing_darts_for_cutting(benchmark::State& state) {
    grow(state, {10, 50, 200}, round_of_darts,
         [](const Pattern& pattern) { benchmark::DoNotOptimize(to_svg(draw_cutting_pieces(pattern))); });
}
BENCHMARK(growth_of_drawing_darts_for_cutting)->Iterations(1);

void growth_of_drawing_crowded_darts_for_cutting(benchmark::State& state) {
    grow(
        state, {50, 100, 200, 400}, [](int darts) { return band_of_darts(darts); },
        [](const Pattern& pattern) { benchmark::DoNotOptimize(to_svg(draw_cutting_pieces(pattern))); });
}
BENCHMARK(growth_of_drawing_crowded_darts_for_cutting)->Iterations(1);

void growth_of_drawing_a_disc_of_darts_for_cutting(benchmark::State& state) {
    grow(state, {50, 100, 200, 400, 800, 1600}, disc_of_darts,
         [](const Pattern& pattern) { benchmark::DoNotOptimize(to_svg(draw_cutting_pieces(pattern))); });
}
BENCHMARK(growth_of_drawing_a_disc_of_darts_for_cutting)->Iterations(1);

PrintResult printed_on_a4(const Pattern& pattern) {
    PrintRequest request;
    request.paper = papers().front();
    return print_pages({printed_piece(pattern.pieces[0], pattern, {pattern.name, "", "", Unit::mm})},
                       request);
}

void growth_of_printing_crowded_darts(benchmark::State& state) {
    grow(
        state, {50, 100, 200, 400}, [](int darts) { return band_of_darts(darts); },
        [](const Pattern& pattern) { benchmark::DoNotOptimize(printed_on_a4(pattern)); });
}
BENCHMARK(growth_of_printing_crowded_darts)->Iterations(1);

// A piece that widens with its darts, so that it takes as many times the pages.
void growth_of_printing_a_widening_piece(benchmark::State& state) {
    grow(
        state, {20, 40, 80, 160}, [](int darts) { return band_of_darts(darts, 60.0 * darts); },
        [](const Pattern& pattern) { benchmark::DoNotOptimize(to_pdf(printed_on_a4(pattern).pages)); });
}
BENCHMARK(growth_of_printing_a_widening_piece)->Iterations(1);

void growth_of_comparing_pieces(benchmark::State& state) {
    grow(state, {100, 300, 1000, 3000}, many_pieces,
         [](const Pattern& pattern) { benchmark::DoNotOptimize(compare(pattern, pattern)); });
}
BENCHMARK(growth_of_comparing_pieces)->Iterations(1);

void growth_of_laying_pieces(benchmark::State& state) {
    grow(state, {10, 100, 300, 1000}, many_pieces, [](const Pattern& pattern) {
        LayRequest request;
        request.width_mm = 1500;
        benchmark::DoNotOptimize(lay_pattern(pattern, request));
    });
}
BENCHMARK(growth_of_laying_pieces)->Iterations(1);

// Runs a program to its end with its output thrown away; the exit status.
int run_quietly(std::vector<std::string> words) {
    posix_spawn_file_actions_t actions;
    posix_spawn_file_actions_init(&actions);
    posix_spawn_file_actions_addopen(&actions, STDOUT_FILENO, "/dev/null", O_WRONLY, 0);
    std::vector<char*> arguments;
    for (std::string& word : words) arguments.push_back(word.data());
    arguments.push_back(nullptr);
    pid_t child = 0;
    int status = -1;
    if (posix_spawnp(&child, arguments[0], &actions, nullptr, arguments.data(), environ) == 0)
        waitpid(child, &status, 0);
    posix_spawn_file_actions_destroy(&actions);
    return WIFEXITED(status) ? WEXITSTATUS(status) : -1;
}

void process_true(benchmark::State& state) {
    for (auto _ : state) run_quietly({"/bin/true"});
}
BENCHMARK(process_true)->UseRealTime()->Unit(benchmark::kMillisecond);

void process_check_block(benchmark::State& state) {
    for (auto _ : state) {
        if (run_quietly({DARTWRIGHT_PROGRAM, "check", block}) != 0)
            state.SkipWithError("the block is not true");
    }
}
BENCHMARK(process_check_block)->UseRealTime()->Unit(benchmark::kMillisecond);

// A folder of 2,000 copies of the block, checked by one process that keeps to one core.
void process_check_folder_of_2000(benchmark::State& state) {
    constexpr int count = 2000;
    const auto folder =
        std::filesystem::temp_directory_path() / ("dartwright-bench-" + std::to_string(getpid()));
    std::filesystem::create_directory(folder);
    for (int k = 0; k < count; ++k) std::filesystem::copy_file(block, folder / (std::to_string(k) + ".json"));
    const std::string format = state.range(0) == 0 ? "text" : "json";
    for (auto _ : state) {
        if (run_quietly({"taskset", "1", DARTWRIGHT_PROGRAM, "check", folder.string(), "--format", format}) !=
            0)
            state.SkipWithError("a copy of the block is not true");
    }
    state.SetItemsProcessed(count * state.iterations());
    state.SetLabel(format);
    std::filesystem::remove_all(folder);
}
BENCHMARK(process_check_folder_of_2000)->Arg(0)->Arg(1)->UseRealTime()->Unit(benchmark::kMillisecond);

const std::string class_folder = DARTWRIGHT_SOURCE_DIR "/fixtures/exercises/chorus-class";

std::vector<std::string> drafts_of_class() {
    std::vector<std::string> paths;
    for (const auto& entry : std::filesystem::directory_iterator(class_folder + "/drafts"))
        paths.push_back(entry.path().string());
    return paths;
}

// One draft of two pieces, read already; a round is all that a class handed in.
void judge_class(benchmark::State& state) {
    const PreparedExercise exercise = prepared(read_exercise_file(class_folder + "/exercise.json"));
    std::vector<Pattern> drafts;
    for (const std::string& path : drafts_of_class()) drafts.push_back(read_pattern_file(path));
    for (auto _ : state) {
        for (const Pattern& draft : drafts) benchmark::DoNotOptimize(assess(exercise, draft));
    }
    state.SetItemsProcessed(static_cast<std::int64_t>(drafts.size()) * state.iterations());
}
BENCHMARK(judge_class)->Unit(benchmark::kMillisecond);

// A folder of so many drafts, marked by one process on all cores, and the most memory that it had.
void process_assess_folder(benchmark::State& state) {
    const auto folder =
        std::filesystem::temp_directory_path() / ("dartwright-class-" + std::to_string(getpid()));
    std::filesystem::create_directory(folder);
    const std::vector<std::string> drafts = drafts_of_class();
    for (std::size_t k = 0; k < static_cast<std::size_t>(state.range(0)); ++k)
        std::filesystem::copy_file(drafts[k % drafts.size()], folder / (std::to_string(k) + ".json"));
    const std::vector<std::string> words{DARTWRIGHT_PROGRAM, "assess",   class_folder + "/exercise.json",
                                         folder.string(),    "--format", "csv"};
    for (auto _ : state) {
        if (run_quietly(words) != 1) state.SkipWithError("no draft of the class has a fault");
    }
    rusage used{};
    getrusage(RUSAGE_CHILDREN, &used);
    state.counters["MB of the largest so far"] = static_cast<double>(used.ru_maxrss) / 1024;
    state.SetItemsProcessed(state.range(0) * state.iterations());
    std::filesystem::remove_all(folder);
}
BENCHMARK(process_assess_folder)
    ->Arg(100)
    ->Arg(1000)
    ->Arg(10000)
    ->UseRealTime()
    ->Unit(benchmark::kMillisecond);

}  // namespace

int main(int count, char** words) {
    dartwright::tools::keep_freed_memory();  // as the program does
    benchmark::Initialize(&count, words);
    benchmark::RunSpecifiedBenchmarks();
}
