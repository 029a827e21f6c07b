// judge BLOCK DRAFT: whether a draft is true and kept what moving darts must keep of its block.
#include <cstdio>
#include <dartwright/checks/check.hpp>
#include <dartwright/comparing/compare.hpp>
#include <dartwright/files/pattern_file.hpp>

using namespace dartwright;

static void say(const std::string& what, const std::string& message, const std::string& remedy) {
    std::printf("%s: %s\n    %s\n", what.c_str(), message.c_str(), remedy.c_str());
}

int main(int count, char** words) try {
    if (count != 3) {
        std::fputs("judge: expected BLOCK DRAFT\n", stderr);
        return 2;
    }
    const Pattern block = read_pattern_file(words[1]);
    const Pattern draft = read_pattern_file(words[2]);
    const Comparison compared = compare(block, draft);
    const CheckReport report = check(draft);
    for (const Loss& loss : compared.losses) say(loss.what, loss.message, loss.remedy);
    for (const Finding& finding : report.findings) say(finding.check, finding.message, finding.remedy);
    const bool is_good = compared.is_kept() && report.passed;
    std::printf("%s: %s\n", draft.name.c_str(), is_good ? "as it should be" : "to be mended");
    return is_good ? 0 : 1;
} catch (const std::exception& error) {
    std::fprintf(stderr, "judge: %s\n", error.what());
    return 3;
}
