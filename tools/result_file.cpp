#include "result_file.hpp"

#include "checked_file.hpp"

namespace dartwright::tools {

OptionSpec output_option(const char* help) {
    return {"output", 'o', "FILE", help};
}

OptionSpec overwrite_option() {
    return {"overwrite", 0, "", "replace the file of -o if there is one; otherwise it is left alone"};
}

bool is_to_standard_output(const Arguments& arguments) {
    return arguments.value("output").value_or("-") == "-";
}

void remember_written(Invocation& call, const std::string& path, Kept kept) {
    call.written = path;
    if (kept == Kept::perhaps_not_on_disk)
        say("dartwright: ", shown_path(path) +
                                ": is written, but its disk does not say whether the text would outlive a "
                                "power cut");
}

void write_result(const Arguments& arguments, Invocation& call, const std::string& result,
                  const std::string& account) {
    if (is_to_standard_output(arguments)) {
        call.out.write(result);
        call.out.flush();
        say_text(account);
        return;
    }
    const std::string path = arguments.required("output");
    if (path.empty()) throw WrongUse("-o needs the name of a file");
    remember_written(
        call, path,
        write_file_whole(path, result, arguments.has("overwrite") ? Overwrite::yes : Overwrite::no));
    call.out.write(account);
}

}  // namespace dartwright::tools
