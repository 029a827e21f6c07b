// The command that a finding names does what its remedy says, typed as it is printed.

#include <set>

#include "tools/program.hpp"

namespace dartwright {
namespace {

Json findings_of(const std::string& file) {
    return Json::parse(dartwright({"check", file, "--format", "json"}).out)["files"][0]["findings"];
}

bool is_of(const Json& finding, const Json& other) {
    for (const char* key : {"check", "piece", "dart", "seam"})
        if (finding[key] != other[key]) return false;
    return true;
}

// Runs the command, gives the file that it made, and looks for the finding in it.
std::string expect_mended(const Json& finding, const Folder& folder) {
    const std::vector<std::string> before = folder.names();
    const std::string command = finding["command"];
    const Ended ended = shell(command, folder.path());
    EXPECT_EQ(ended.status, 0) << command << "\n" << ended.err;
    std::string made;
    for (const std::string& name : folder.names())
        if (std::find(before.begin(), before.end(), name) == before.end()) made = name;
    EXPECT_NE(made, "") << command;
    if (made.empty()) return made;
    for (const Json& left : findings_of(folder / made))
        EXPECT_FALSE(is_of(left, finding)) << command << "\n" << left["message"];
    return made;
}

TEST(named_command, mends_what_it_is_named_for_in_every_fault) {
    std::set<std::string> checks;
    for (const auto& entry : std::filesystem::directory_iterator(source_folder + "/fixtures/faults")) {
        const std::string file = entry.path().string();
        if (entry.path().extension() != ".json" || file.find(".true.json") != std::string::npos) continue;
        for (const Json& finding : findings_of(file)) {
            if (finding["command"].is_null()) continue;
            const Folder folder;
            expect_mended(finding, folder);
            checks.insert(finding["check"]);
        }
    }
    EXPECT_EQ(checks, (std::set<std::string>{"dart-legs", "dart-mouth", "dart-point", "outline-kink",
                                             "seam-corner", "seam-length"}));
}

TEST(named_command, is_typed_so_that_the_shell_takes_every_name_as_it_is) {
    const Folder folder;
    const std::string fault = text_of_file(source_folder + "/fixtures/faults/dart-legs.json");
    folder.add("front's.json",
               replaced(fault, R"("dart": "waist dart")", R"("dart": "waist `touch a` $HOME \"dart\"")"));
    const Ended checked = shell("dartwright check \"front's.json\"", folder.path());
    EXPECT_NE(
        checked.out.find("\n     Command: dartwright true 'front'\\''s.json' --piece \"bodice front\" --dart "
                         "'waist `touch a` $HOME \"dart\"' -o 'front'\\''s-mended.json'\n"),
        std::string::npos)
        << checked.out;
    const Json finding = findings_of(folder / "front's.json")[0];
    EXPECT_EQ(expect_mended(finding, folder), "front's-mended.json");
    EXPECT_EQ(folder.names(), (std::vector<std::string>{"front's-mended.json", "front's.json"}));
}

// Every command wrote the same file: the second was refused, since what is there is never written over.
TEST(named_command, follows_another_until_nothing_is_left) {
    const Folder folder;
    const std::string fault = text_of_file(source_folder + "/fixtures/faults/dart-legs.json");
    Json pattern = Json::parse(fault);
    Json second = pattern["pieces"][0];
    second["name"] = "second front";
    Json third = second;
    third["name"] = "third front";
    pattern["pieces"] = {pattern["pieces"][0], second, third};
    folder.add("three fronts.json", pattern.dump());
    std::string file = "three fronts.json";
    for (const char* made :
         {"three fronts-mended.json", "three fronts-mended-2.json", "three fronts-mended-3.json"}) {
        const Json findings =
            Json::parse(shell("dartwright check --format json " + in_shell_quotes(file), folder.path())
                            .out)["files"][0]["findings"];
        ASSERT_FALSE(findings.empty()) << file;
        file = expect_mended(findings[0], folder);
        EXPECT_EQ(file, made);
    }
    EXPECT_EQ(dartwright({"check", folder / file}).status, 0);
}

TEST(named_command, begins_no_file_like_an_option_and_names_none_for_standard_input) {
    const Folder folder;
    const std::string fault = text_of_file(source_folder + "/fixtures/faults/dart-legs.json");
    folder.add("-front.json", fault);
    const Ended checked = shell("dartwright check ./-front.json", folder.path());
    EXPECT_NE(checked.out.find("Command: dartwright true ./-front.json "), std::string::npos) << checked.out;
    EXPECT_NE(dartwright({"check", "-"}, fault).out.find("Command: dartwright true FILE "),
              std::string::npos);
}

}  // namespace
}  // namespace dartwright
