@echo off
rem Starts Chordlog from the jar beside this file. CHORDLOG_JAVA_OPTIONS: options for Java.
setlocal
set "java=java"
if defined JAVA_HOME set "java=%JAVA_HOME%\bin\java"
"%java%" %CHORDLOG_JAVA_OPTIONS% -jar "%~dp0chordlog.jar" %*
exit /b %ERRORLEVEL%
