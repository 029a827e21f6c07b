#include "ending.hpp"

#include <algorithm>
#include <array>

#include "arguments.hpp"
#include "checked_file.hpp"
#include "dartwright/files/output_file.hpp"
#include "dartwright/files/pattern_file.hpp"
#include "dartwright/files/rule_file.hpp"
#include "dartwright/pattern/errors.hpp"
#include "dartwright/pattern/pattern_problems.hpp"
#include "unforeseen.hpp"

namespace dartwright::tools {
namespace {

struct KindOfError {
    ErrorKind kind;
    ExitStatus status;
    const char* word;
};
constexpr std::array<KindOfError, 8> kinds_of_error{
    {{ErrorKind::impossible, ExitStatus::impossible, "impossible"},
     {ErrorKind::beyond_the_run, ExitStatus::impossible, "beyond the run"},
     {ErrorKind::unknown_name, ExitStatus::wrong_use, "unknown name"},
     {ErrorKind::bad_words, ExitStatus::wrong_use, "bad words"},
     {ErrorKind::output_exists, ExitStatus::wrong_use, "output exists"},
     {ErrorKind::bad_pattern, ExitStatus::unreadable, "not valid"},
     {ErrorKind::unreadable, ExitStatus::unreadable, "unreadable"},
     {ErrorKind::library_missing, ExitStatus::unreadable, "library missing"}}};

const KindOfError& kind_of(const Error& error) {
    const auto found = std::find_if(kinds_of_error.begin(), kinds_of_error.end(),
                                    [&](const KindOfError& each) { return each.kind == error.error_kind; });
    if (found == kinds_of_error.end()) throw std::logic_error("an error of no kind");
    return *found;
}

Ending unforeseen_ending(const std::exception_ptr& thrown) {
    Unforeseen other = unforeseen(thrown);
    const char* kind = other.status == ExitStatus::internal ? "internal" : "out of memory";
    return {other.status, std::move(other.words), false, {{"kind", kind}}};
}

Json details_of(const InvalidPattern& error) {
    Json problems = Json::array();
    for (const FileProblem& each : error.problems)
        problems.push_back({{"at", each.pointer}, {"found", each.found}, {"expected", each.expected}});
    return {
        {"kind", kind_of(error).word}, {"file", error.file}, {"problems", problems}, {"more", error.more}};
}

Json details_of(const Error& error, Unit unit) {
    const Unit told_in = error.asked_in.value_or(unit);
    Json details{{"kind", kind_of(error).word}};
    if (const auto* beyond = dynamic_cast<const BeyondTheRun*>(&error)) {
        details["place"] = beyond->place;
        details["edge"] = beyond->edge;
        details["length"] = beyond->length_mm;
    }
    if (const auto* impossible = dynamic_cast<const Impossible*>(&error)) {
        details["reason"] = impossible->reason_told.in(told_in);
        if (!impossible->remedy_told.empty()) details["remedy"] = impossible->remedy_told.in(told_in);
    }
    if (const auto* unknown = dynamic_cast<const UnknownName*>(&error)) {
        details["what"] = unknown->kind;
        details["name"] = unknown->name;
        details["known"] = unknown->known;
    }
    return details;
}

}  // namespace

Ending ending_of(const std::exception_ptr& thrown, Unit unit) {
    try {
        std::rethrow_exception(thrown);
    } catch (const InvalidRule& error) {
        return {ExitStatus::unreadable, error.file + ": " + all_problems(error), true, details_of(error)};
    } catch (const InvalidPattern& error) {
        return {ExitStatus::unreadable, error.file + ": " + first_problem(error), true, details_of(error)};
    } catch (const FileTrouble& error) {
        return {ExitStatus::unreadable, error.what(), true, details_of(error, unit)};
    } catch (const OutputExists& error) {
        Json details = details_of(error, unit);
        details["file"] = error.path;
        return {ExitStatus::wrong_use, error.what() + std::string(" with --overwrite"), true, details};
    } catch (const WrongUse& error) {
        return {ExitStatus::wrong_use, error.what(), true, {{"kind", "wrong use"}}};
    } catch (const UnsoundPattern&) {
        // What is read is sound: an operation of ours gave it.
        return unforeseen_ending(thrown);
    } catch (const Error& error) {
        return {kind_of(error).status, error.in(unit), false, details_of(error, unit)};
    } catch (...) {
        return unforeseen_ending(thrown);
    }
}

bool is_json_asked_for(const std::vector<std::string>& words) {
    std::string format;
    for (std::size_t i = 0; i < words.size(); ++i) {
        const std::string given = "--format=";
        if (words[i].rfind(given, 0) == 0) format = words[i].substr(given.size());
        if (words[i] == "--format" && i + 1 < words.size()) format = words[i + 1];
    }
    return format == "json";
}

std::string json_line_of(const Ending& ending, const std::string& name, const Invocation& call) {
    const std::size_t space = name.find(' ');
    const std::string command = space == std::string::npos ? "" : name.substr(space + 1);
    Json line{{"dartwright_error", 1}, {"status", static_cast<int>(ending.status)}, {"command", command}};
    if (!ending.names_its_file && !call.subject.empty()) line["file"] = call.subject;
    line["message"] = ending.words;
    line.update(ending.details);
    if (!call.written.empty()) line["written"] = call.written;
    constexpr int in_one_line = -1;
    return line.dump(in_one_line, ' ', true, Json::error_handler_t::replace) + "\n";
}

}  // namespace dartwright::tools
