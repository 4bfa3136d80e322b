@echo off
rem Starts Chordlog from the jar beside this file. CHORDLOG_JAVA_OPTIONS: options for Java.
rem JAVA_HOME: which Java, 17 or newer; without it the first one of PATH.
setlocal
set "java=java.exe"
if defined JAVA_HOME set "java=%JAVA_HOME%\bin\java.exe"
if defined JAVA_HOME if not exist "%java%" goto none
if not defined JAVA_HOME for %%f in (java.exe) do if "%%~$PATH:f"=="" goto none
"%java%" %CHORDLOG_JAVA_OPTIONS% -jar "%~dp0chordlog.jar" %*
exit /b %ERRORLEVEL%
:none
echo chordlog needs Java 17 or newer, and "%java%" was not found: install it, or set JAVA_HOME.>&2
exit /b 2
